package dev.waterjet.docs.site;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.commonmark.ext.heading.anchor.IdGenerator;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.CustomNode;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/**
 * A page of the guides: its Markdown file, its parsed text and its place in the site.
 *
 * @param source the Markdown file
 * @param output path of the HTML below the site, with slashes
 * @param document parsed text
 * @param ids anchor of each heading
 */
record SitePage(Path source, String output, Node document, Map<Heading, String> ids) {

    static SitePage of(Path source, String output, Node document) {
        IdGenerator generator = IdGenerator.builder().build();
        Map<Heading, String> ids = new LinkedHashMap<>();
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                ids.put(heading, generator.generateId(words(heading)));
            }
        });
        return new SitePage(source, output, document, ids);
    }

    String title() {
        return ids.keySet().stream()
                .filter(heading -> heading.getLevel() == 1)
                .findFirst()
                .map(SitePage::words)
                .orElseThrow(() -> new IllegalStateException(source + " has no title"));
    }

    /** Way from this page to the top of the site: empty, or {@code "../"}. */
    String up() {
        return "../".repeat((int) output.chars().filter(c -> c == '/').count());
    }

    /** Headings below the title, for the contents of the page. */
    List<Heading> sections() {
        return ids.keySet().stream().filter(heading -> heading.getLevel() == 2).toList();
    }

    /** The text of a node without marks. */
    static String words(Node node) {
        StringBuilder words = new StringBuilder();
        node.accept(new AbstractVisitor() {
            @Override
            public void visit(Text text) {
                words.append(text.getLiteral());
            }

            @Override
            public void visit(Code code) {
                words.append(code.getLiteral());
            }

            @Override
            public void visit(SoftLineBreak lineBreak) {
                words.append(' ');
            }

            @Override
            public void visit(HardLineBreak lineBreak) {
                words.append(' ');
            }

            @Override
            public void visit(Paragraph paragraph) {
                visitChildren(paragraph);
                words.append(' ');
            }

            @Override
            public void visit(CustomNode cell) {
                visitChildren(cell);
                words.append(' ');
            }

            @Override
            public void visit(FencedCodeBlock block) {
                words.append(' ').append(block.getLiteral()).append(' ');
            }
        });
        return words.toString().strip();
    }

    /** The page in pieces for the search: each heading with the words that follow it. */
    List<Map.Entry<Heading, String>> pieces() {
        List<Map.Entry<Heading, String>> pieces = new ArrayList<>();
        Heading current = null;
        StringBuilder words = new StringBuilder();
        for (Node node = document.getFirstChild(); node != null; node = node.getNext()) {
            if (node instanceof Heading heading) {
                if (current != null) {
                    pieces.add(Map.entry(current, words.toString().strip()));
                }
                current = heading;
                words.setLength(0);
            } else {
                words.append(words(node)).append(' ');
            }
        }
        if (current != null) {
            pieces.add(Map.entry(current, words.toString().strip()));
        }
        return pieces;
    }
}
