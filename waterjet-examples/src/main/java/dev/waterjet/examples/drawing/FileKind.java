package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Kind of a file by its content; its name plays no part. Signatures of formats are those of their public descriptions (from
 * memory).
 */
public enum FileKind {
    /** Part program in words of ISO 6983. */
    PROGRAM("a part program"),
    /** Drawing in SVG. */
    SVG("an SVG drawing"),
    /** Drawing in DXF, as text. */
    DXF("a DXF drawing"),
    /** Drawing in DXF, in its binary form. */
    BINARY_DXF("a binary DXF drawing; save it as ASCII DXF"),
    /** Binary drawing of a CAD program, which begins {@code AC} and four digits. */
    BINARY_CAD("a binary CAD drawing; save it as ASCII DXF"),
    /** PDF. */
    PDF("a PDF; export the drawing as DXF or SVG"),
    /** PostScript. */
    POSTSCRIPT("a PostScript file; export the drawing as DXF or SVG"),
    /** STEP exchange file, ISO 10303-21. */
    STEP("a STEP model (ISO 10303-21); export its flat drawing as DXF"),
    /** gzip. */
    GZIP("compressed with gzip; unpack it first"),
    /** ZIP archive, which many programs use for their own files. */
    ZIP("a ZIP archive; unpack it, or export the drawing as DXF or SVG"),
    /** Raster image: PNG, JPEG, GIF, BMP, TIFF. */
    IMAGE("a raster image, which has no lines to cut; export the drawing as DXF or SVG"),
    /** XML that is not SVG. */
    XML("XML, but not SVG"),
    /** Text of another kind. */
    TEXT("text, but neither a part program nor a drawing"),
    /** Nothing, or spaces. */
    EMPTY("empty"),
    /** Anything else. */
    BINARY("binary data of an unknown kind");

    private static final int HEAD = 8192;

    private static final Pattern CAD = Pattern.compile("AC1[0-9]{3}.*", Pattern.DOTALL);
    private static final Pattern DXF_START =
            Pattern.compile("(\\s*999[ \\t]*\\R[^\\n\\r]*\\R)*\\s*0[ \\t]*\\R\\s*SECTION\\s.*", Pattern.DOTALL);
    private static final Pattern XML_ROOT = Pattern.compile("<([A-Za-z_][\\w.-]*:)?([A-Za-z_][\\w.-]*)");
    private static final int LONGEST_BLOCK = 1000;
    private static final Pattern BLOCK = Pattern.compile(
            "/?(:[0-9]+)?(#[0-9]+=[^=]*|(\\s*[A-Z]\\s*[-+=#\\[]?\\s*[#\\[]?[-+]?[0-9.][0-9.\\[\\]#]*)+)\\s*\\*?");
    private static final int LINES = 200;

    private final String label;

    FileKind(String label) {
        this.label = label;
    }

    /** {@return the kind for people, with what to do about it where it is no input} */
    public String label() {
        return label;
    }

    /**
     * Returns the kind of a file.
     *
     * @param content bytes of the file
     * @return its kind
     */
    public static FileKind of(byte[] content) {
        FileKind binary = bySignature(content);
        return binary != null ? binary : ofText(text(content));
    }

    /**
     * Refuses a file that is not of a kind that is read.
     *
     * @param content bytes of the file
     * @param accepted kinds that are read
     * @return its kind, one of them
     * @throws TextException with code {@code wrong-file-kind}, the kind and the kinds that are read
     */
    public static FileKind require(byte[] content, FileKind... accepted) {
        FileKind kind = of(content);
        List<FileKind> kinds = Arrays.asList(accepted);
        if (kinds.contains(kind)) {
            return kind;
        }
        throw new TextException(Message.of("wrong-file-kind", "this is {kind}; expected: {accepted}")
                .with("kind", kind.label)
                .with(
                        "accepted",
                        String.join(", ", kinds.stream().map(FileKind::label).toList())));
    }

    private static @Nullable FileKind bySignature(byte[] content) {
        String head = new String(content, 0, Math.min(content.length, HEAD), StandardCharsets.ISO_8859_1);
        if (head.startsWith("%PDF-") || head.stripLeading().startsWith("%PDF-")) {
            return PDF;
        }
        if (head.startsWith("%!PS") || head.startsWith("\u00c5\u00d0\u00d3\u00c6")) {
            return POSTSCRIPT;
        }
        if (head.startsWith("\u001f\u008b")) {
            return GZIP;
        }
        if (head.startsWith("PK\u0003\u0004") || head.startsWith("PK\u0005\u0006")) {
            return ZIP;
        }
        if (CAD.matcher(head).matches()) {
            return BINARY_CAD;
        }
        if (head.length() > 22 && head.substring(0, 22).endsWith(" Binary DXF\r\n\u001a\u0000")) {
            return BINARY_DXF;
        }
        if (head.startsWith("\u0089PNG\r\n")
                || head.startsWith("\u00ff\u00d8\u00ff")
                || head.startsWith("GIF8")
                || (head.startsWith("BM") && head.indexOf('\u0000') >= 0)
                || head.startsWith("II*\u0000")
                || head.startsWith("MM\u0000*")) {
            return IMAGE;
        }
        if (head.stripLeading().startsWith("ISO-10303-21;")) {
            return STEP;
        }
        boolean isWide = head.startsWith("\u00ff\u00fe") || head.startsWith("\u00fe\u00ff");
        return !isWide && head.indexOf('\u0000') >= 0 ? BINARY : null;
    }

    private static FileKind ofText(String text) {
        String head = text.substring(0, Math.min(text.length(), 8 * HEAD));
        if (head.isBlank()) {
            return EMPTY;
        }
        if (DXF_START.matcher(head.substring(0, Math.min(head.length(), HEAD))).matches()) {
            return DXF;
        }
        if (head.stripLeading().startsWith("<")) {
            Matcher root = XML_ROOT.matcher(afterProlog(head));
            return root.lookingAt() && "svg".equals(root.group(2)) ? SVG : XML;
        }
        return isProgram(head) ? PROGRAM : TEXT;
    }

    /** Text from the root element on: without declarations, comments and document type. */
    private static String afterProlog(String head) {
        String rest = head.stripLeading();
        while (rest.startsWith("<?") || rest.startsWith("<!")) {
            String end = rest.startsWith("<?") ? "?>" : rest.startsWith("<!--") ? "-->" : ">";
            int subset = rest.indexOf('[');
            if (end.equals(">") && subset >= 0 && subset < rest.indexOf('>')) {
                end = "]>";
            }
            int at = rest.indexOf(end);
            if (at < 0) {
                return rest;
            }
            rest = rest.substring(at + end.length()).stripLeading();
        }
        return rest;
    }

    /** Whether most lines outside comments are words of a letter and a number. */
    private static boolean isProgram(String head) {
        int blocks = 0;
        int others = 0;
        List<String> lines = head.toUpperCase(Locale.ROOT)
                .replaceAll("\\([^()\\n\\r]*\\)", " ")
                .lines()
                .limit(LINES)
                .toList();
        for (String line : lines) {
            String words = line.replaceAll(";.*", "").strip();
            if (words.isEmpty() || words.startsWith("%")) {
                continue;
            }
            if (words.length() <= LONGEST_BLOCK && BLOCK.matcher(words).matches()) {
                blocks++;
            } else {
                others++;
            }
        }
        boolean hasComments = blocks == 0 && others == 0;
        return hasComments || blocks > others;
    }

    /**
     * Returns the text of a file: UTF-16 by its byte-order mark, else UTF-8 where it is valid, else Windows-1252.
     *
     * @param content bytes of the file
     * @return the text, without byte-order mark
     */
    public static String text(byte[] content) {
        if (content.length >= 2 && (content[0] == (byte) 0xff && content[1] == (byte) 0xfe)) {
            return new String(content, 2, content.length - 2, StandardCharsets.UTF_16LE);
        }
        if (content.length >= 2 && (content[0] == (byte) 0xfe && content[1] == (byte) 0xff)) {
            return new String(content, 2, content.length - 2, StandardCharsets.UTF_16BE);
        }
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(content))
                    .toString();
        } catch (CharacterCodingException e) {
            text = new String(content, Charset.forName("windows-1252"));
        }
        return text.startsWith("\ufeff") ? text.substring(1) : text;
    }
}
