package dev.waterjet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.ObjectStreamClass;
import java.io.ObjectStreamConstants;
import java.io.Serializable;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Serial form of a value as bytes, with the places of the doubles in it: fields of objects and of records, and elements
 * of arrays, found by the grammar of the stream (Java Object Serialization Specification, chapter 6).
 */
public final class SerialForm {

    /** Class in a stream: its name, its flags, one letter for the type of each field, its serializable superclass. */
    private record ClassDescription(
            String name, int flags, String fields, @Nullable ClassDescription parent) {}

    private static final class Place extends ByteArrayInputStream {
        Place(byte[] bytes) {
            super(bytes);
        }

        int offset() {
            return pos;
        }
    }

    private final byte[] bytes;
    private final Place place;
    private final DataInputStream in;
    private final List<Object> handles = new ArrayList<>();
    private final List<Integer> doubles = new ArrayList<>();

    private SerialForm(byte[] bytes) {
        this.bytes = bytes;
        this.place = new Place(bytes);
        this.in = new DataInputStream(place);
    }

    /** The serial form of a value. */
    public static SerialForm of(Object value) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        SerialForm form = new SerialForm(bytes.toByteArray());
        form.in.readInt();
        form.content(form.in.readUnsignedByte());
        if (form.place.available() > 0) {
            throw new AssertionError("bytes behind the value");
        }
        return form;
    }

    /** A form of a class that gives no field, as an object stream may. */
    public static byte[] withoutFields(Class<? extends Serializable> type) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeShort(ObjectStreamConstants.STREAM_MAGIC);
        out.writeShort(ObjectStreamConstants.STREAM_VERSION);
        out.writeByte(ObjectStreamConstants.TC_OBJECT);
        out.writeByte(ObjectStreamConstants.TC_CLASSDESC);
        out.writeUTF(type.getName());
        out.writeLong(ObjectStreamClass.lookup(type).getSerialVersionUID());
        out.writeByte(ObjectStreamConstants.SC_SERIALIZABLE);
        out.writeShort(0);
        out.writeByte(ObjectStreamConstants.TC_ENDBLOCKDATA);
        out.writeByte(ObjectStreamConstants.TC_NULL);
        return bytes.toByteArray();
    }

    /** Reads a value. */
    public static Object read(byte[] bytes) throws IOException, ClassNotFoundException {
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes))) {
            return in.readObject();
        }
    }

    /** The bytes. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Number of doubles in the form. */
    public int doubles() {
        return doubles.size();
    }

    /** One of the doubles. */
    public double value(int index) {
        return ByteBuffer.wrap(bytes).getDouble(doubles.get(index));
    }

    /** The bytes with another double in one place. */
    public byte[] with(int index, double forged) {
        byte[] copy = bytes.clone();
        ByteBuffer.wrap(copy).putDouble(doubles.get(index), forged);
        return copy;
    }

    private Object content(int tag) throws IOException {
        return switch (tag) {
            case ObjectStreamConstants.TC_NULL -> "";
            case ObjectStreamConstants.TC_REFERENCE -> handles.get(in.readInt() - ObjectStreamConstants.baseWireHandle);
            case ObjectStreamConstants.TC_CLASSDESC -> classDescription();
            case ObjectStreamConstants.TC_OBJECT -> object();
            case ObjectStreamConstants.TC_STRING -> handle(in.readUTF());
            case ObjectStreamConstants.TC_ARRAY -> array();
            case ObjectStreamConstants.TC_CLASS -> {
                description();
                yield handle("class");
            }
            case ObjectStreamConstants.TC_ENUM -> {
                description();
                handle("constant");
                yield content(in.readUnsignedByte());
            }
            case ObjectStreamConstants.TC_BLOCKDATA -> skip(in.readUnsignedByte());
            case ObjectStreamConstants.TC_BLOCKDATALONG -> skip(in.readInt());
            default -> throw new AssertionError("tag " + tag + " at " + place.offset());
        };
    }

    private Object handle(Object object) {
        handles.add(object);
        return object;
    }

    private @Nullable ClassDescription description() throws IOException {
        return content(in.readUnsignedByte()) instanceof ClassDescription found ? found : null;
    }

    private ClassDescription classDescription() throws IOException {
        String name = in.readUTF();
        in.readLong();
        int index = handles.size();
        handle(name);
        int flags = in.readUnsignedByte();
        StringBuilder fields = new StringBuilder();
        for (int count = in.readUnsignedShort(); count > 0; count--) {
            char type = (char) in.readUnsignedByte();
            in.readUTF();
            if (type == 'L' || type == '[') {
                content(in.readUnsignedByte());
            }
            fields.append(type);
        }
        annotation();
        ClassDescription description = new ClassDescription(name, flags, fields.toString(), description());
        handles.set(index, description);
        return description;
    }

    private Object object() throws IOException {
        ClassDescription type = description();
        handle("object");
        data(type);
        return "object";
    }

    private void data(@Nullable ClassDescription type) throws IOException {
        if (type == null) {
            return;
        }
        data(type.parent());
        if ((type.flags() & ObjectStreamConstants.SC_SERIALIZABLE) != 0) {
            for (char field : type.fields().toCharArray()) {
                value(field);
            }
            if ((type.flags() & ObjectStreamConstants.SC_WRITE_METHOD) != 0) {
                annotation();
            }
        } else {
            annotation();
        }
    }

    private Object array() throws IOException {
        ClassDescription type = Objects.requireNonNull(description());
        handle("array");
        for (int count = in.readInt(); count > 0; count--) {
            value(type.name().charAt(1));
        }
        return "array";
    }

    private void value(char type) throws IOException {
        switch (type) {
            case 'B', 'Z' -> skip(1);
            case 'C', 'S' -> skip(2);
            case 'I', 'F' -> skip(4);
            case 'J' -> skip(8);
            case 'D' -> {
                doubles.add(place.offset());
                skip(8);
            }
            default -> content(in.readUnsignedByte());
        }
    }

    private void annotation() throws IOException {
        for (int tag = in.readUnsignedByte();
                tag != ObjectStreamConstants.TC_ENDBLOCKDATA;
                tag = in.readUnsignedByte()) {
            content(tag);
        }
    }

    private Object skip(int count) throws IOException {
        if (in.skipBytes(count) != count) {
            throw new EOFException();
        }
        return "";
    }
}
