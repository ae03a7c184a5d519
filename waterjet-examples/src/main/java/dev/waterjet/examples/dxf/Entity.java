package dev.waterjet.examples.dxf;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.List;

/** Entity or table entry: its type and the groups that follow, up to the next group 0. */
final class Entity {

    private final String type;
    private final int line;
    private final List<Group> groups = new ArrayList<>();

    /** Vertices of a POLYLINE, which are entities of their own in the file. */
    private final List<Entity> vertices = new ArrayList<>();

    Entity(String type, int line) {
        this.type = type;
        this.line = line;
    }

    String type() {
        return type;
    }

    int line() {
        return line;
    }

    List<Group> groups() {
        return groups;
    }

    List<Entity> vertices() {
        return vertices;
    }

    String text(int code, String otherwise) {
        for (Group group : groups) {
            if (group.code() == code) {
                return group.value();
            }
        }
        return otherwise;
    }

    double number(int code, double otherwise) {
        for (Group group : groups) {
            if (group.code() == code) {
                return group.number();
            }
        }
        return otherwise;
    }

    double required(int code) {
        for (Group group : groups) {
            if (group.code() == code) {
                return group.number();
            }
        }
        throw fault(Message.of("dxf-missing", "{type} has no group {code}")
                .with("type", type)
                .with("code", code));
    }

    int whole(int code, int otherwise) {
        for (Group group : groups) {
            if (group.code() == code) {
                return group.whole();
            }
        }
        return otherwise;
    }

    boolean hasFlag(int code, int bit) {
        return (whole(code, 0) & bit) != 0;
    }

    /** All values of a group code in their order. */
    double[] numbers(int code) {
        return groups.stream()
                .filter(group -> group.code() == code)
                .mapToDouble(Group::number)
                .toArray();
    }

    String layer() {
        return text(8, "0");
    }

    TextException fault(Message message) {
        return new TextException(line, 1, message);
    }
}
