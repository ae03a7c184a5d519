package dev.waterjet.examples.dxf;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Content of a DXF file: header variables, layers, blocks and the entities of model space. */
final class DxfFile {

    private static final int MAX_CHARACTERS = 50_000_000;

    /** Block of entities. */
    record Block(String name, Entity head, List<Entity> entities) {}

    /** Layer of the table. */
    record Layer(String name, boolean isOff, boolean isFrozen, String colour) {}

    private final List<Group> groups;
    private final Map<String, Group> header = new HashMap<>();
    private final Map<String, Layer> layers = new HashMap<>();
    private final Map<String, Block> blocks = new HashMap<>();
    private List<Entity> entities = new ArrayList<>();
    private int at;

    private DxfFile(List<Group> groups) {
        this.groups = groups;
    }

    static DxfFile parse(String text) {
        if (text.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("drawing-too-long", "the drawing has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        DxfFile file = new DxfFile(pairs(text));
        file.sections();
        return file;
    }

    private static List<Group> pairs(String text) {
        List<Group> groups = new ArrayList<>();
        List<String> lines = text.lines().toList();
        int i = 0;
        while (i < lines.size() && lines.get(i).isBlank()) {
            i++;
        }
        for (; i + 1 < lines.size(); i += 2) {
            String code = lines.get(i).strip();
            if (!code.matches("-?[0-9]{1,4}")) {
                throw new TextException(
                        i + 1,
                        1,
                        Message.of("dxf-group-code", "expected a group code, not {text}")
                                .withInput("text", code));
            }
            int number = Integer.parseInt(code);
            if (number != 999) {
                groups.add(new Group(number, lines.get(i + 1).strip(), i + 2));
            }
            if (number == 0 && lines.get(i + 1).strip().equals("EOF")) {
                break;
            }
        }
        return groups;
    }

    private @Nullable Group peek() {
        return at < groups.size() ? groups.get(at) : null;
    }

    private boolean isNext(int code, String value) {
        Group next = peek();
        return next != null && next.code() == code && next.value().equalsIgnoreCase(value);
    }

    private void sections() {
        while (at < groups.size() && !isNext(0, "EOF")) {
            Group group = groups.get(at++);
            Group name = peek();
            if (group.code() != 0 || !group.value().equals("SECTION") || name == null) {
                continue;
            }
            at++;
            switch (name.value().toUpperCase(Locale.ROOT)) {
                case "HEADER" -> header();
                case "TABLES" -> tables();
                case "BLOCKS" -> blocks();
                case "ENTITIES" -> entities = entities("ENDSEC");
                default -> skip();
            }
        }
    }

    private void skip() {
        while (at < groups.size() && !isNext(0, "ENDSEC")) {
            at++;
        }
    }

    private void header() {
        while (at < groups.size() && !isNext(0, "ENDSEC")) {
            Group group = groups.get(at++);
            Group next = peek();
            if (group.code() == 9 && next != null && next.code() != 9) {
                header.put(group.value().toUpperCase(Locale.ROOT), next);
            }
        }
    }

    private void tables() {
        while (at < groups.size() && !isNext(0, "ENDSEC")) {
            if (isNext(0, "LAYER")) {
                Entity entry = entity();
                int colour = entry.whole(62, 7);
                String name = entry.text(2, "");
                layers.put(
                        key(name), new Layer(name, colour < 0, entry.hasFlag(70, 1), colour(entry, Math.abs(colour))));
            } else {
                at++;
            }
        }
    }

    /** Colour of an entity or layer: true colour as {@code #rrggbb}, else the index as {@code colour:7}. */
    private static String colour(Entity entity, int index) {
        int rgb = entity.whole(420, -1);
        return rgb >= 0 ? String.format(Locale.ROOT, "#%06x", rgb & 0xffffff) : "colour:" + index;
    }

    private void blocks() {
        while (at < groups.size() && !isNext(0, "ENDSEC")) {
            if (isNext(0, "BLOCK")) {
                Entity head = entity();
                List<Entity> within = entities("ENDBLK");
                String name = head.text(2, "");
                blocks.put(key(name), new Block(name, head, within));
            } else {
                at++;
            }
        }
    }

    /** Entities up to a mark, which stays. */
    private List<Entity> entities(String end) {
        List<Entity> found = new ArrayList<>();
        Entity polyline = null;
        while (at < groups.size() && !isNext(0, end) && !isNext(0, "ENDSEC")) {
            if (groups.get(at).code() != 0) {
                at++;
                continue;
            }
            Entity entity = entity();
            switch (entity.type()) {
                case "VERTEX" -> {
                    if (polyline != null) {
                        polyline.vertices().add(entity);
                    }
                }
                case "SEQEND" -> polyline = null;
                default -> {
                    polyline = entity.type().equals("POLYLINE") ? entity : null;
                    found.add(entity);
                }
            }
        }
        return found;
    }

    private Entity entity() {
        Group head = groups.get(at++);
        Entity entity = new Entity(head.value().toUpperCase(Locale.ROOT), head.line());
        while (at < groups.size() && groups.get(at).code() != 0) {
            entity.groups().add(groups.get(at++));
        }
        return entity;
    }

    private static String key(String name) {
        return name.toUpperCase(Locale.ROOT);
    }

    List<Entity> entities() {
        return entities;
    }

    Optional<Group> variable(String name) {
        return Optional.ofNullable(header.get(name));
    }

    Optional<Block> block(String name) {
        return Optional.ofNullable(blocks.get(key(name)));
    }

    Layer layer(String name) {
        return layers.getOrDefault(key(name), new Layer(name, false, false, "colour:7"));
    }

    /** Colour of an entity; that of its layer unless it has its own, that of the insert if it says so. */
    String colour(Entity entity, String layer, String ofBlock) {
        int index = entity.whole(62, 256);
        if (entity.whole(420, -1) < 0 && (index == 256 || index < 0)) {
            return layer(layer).colour();
        }
        return entity.whole(420, -1) < 0 && index == 0 ? ofBlock : colour(entity, index);
    }
}
