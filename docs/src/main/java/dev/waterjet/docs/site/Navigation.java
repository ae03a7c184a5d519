package dev.waterjet.docs.site;

import static dev.waterjet.examples.chart.SvgText.escaped;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.jspecify.annotations.Nullable;

/**
 * Navigation by reader: the sections of the index page, each with the pages to which it links. The index page is the only
 * place where the order is written.
 */
final class Navigation {

    private final SitePage index;
    private final Map<String, List<SitePage>> groups;

    private Navigation(SitePage index, Map<String, List<SitePage>> groups) {
        this.index = index;
        this.groups = groups;
    }

    /**
     * Reads the sections of the index page.
     *
     * @param index the index page
     * @param target page to which a link of a page leads, or null
     */
    static Navigation of(SitePage index, BiFunction<SitePage, String, @Nullable SitePage> target) {
        Map<String, List<SitePage>> groups = new LinkedHashMap<>();
        String group = "";
        for (Node node = index.document().getFirstChild(); node != null; node = node.getNext()) {
            if (node instanceof Heading heading) {
                group = SitePage.words(heading);
            } else if (heading(node) == 2) {
                List<SitePage> pages = groups.computeIfAbsent(group, key -> new ArrayList<>());
                links(node).stream()
                        .map(link -> target.apply(index, link))
                        .filter(page -> page != null && !page.equals(index) && !pages.contains(page))
                        .forEach(pages::add);
            }
        }
        groups.values().removeIf(List::isEmpty);
        return new Navigation(index, groups);
    }

    /** Level of the heading under which a node stands; 1 if there is none. */
    private static int heading(Node node) {
        Node before = node.getPrevious();
        while (before != null && !(before instanceof Heading)) {
            before = before.getPrevious();
        }
        return before instanceof Heading heading ? heading.getLevel() : 1;
    }

    private static List<String> links(Node node) {
        List<String> links = new ArrayList<>();
        node.accept(new AbstractVisitor() {
            @Override
            public void visit(Link link) {
                links.add(link.getDestination());
            }
        });
        return links;
    }

    /** Pages that the navigation reaches. */
    Set<String> reached() {
        Set<String> reached = new TreeSet<>();
        reached.add(index.output());
        groups.values().forEach(pages -> pages.forEach(page -> reached.add(page.output())));
        return reached;
    }

    String html(SitePage current) {
        StringBuilder html = new StringBuilder();
        boolean isMarked = false;
        for (Map.Entry<String, List<SitePage>> group : groups.entrySet()) {
            boolean isOpen = group.getValue().contains(current);
            html.append("<section").append(isOpen ? " class=\"here\"" : "").append("><h2>");
            html.append(escaped(group.getKey())).append("</h2><ul>");
            for (SitePage page : group.getValue()) {
                boolean isHere = page.equals(current) && !isMarked;
                isMarked |= isHere;
                html.append("<li><a").append(isHere ? " aria-current=\"page\"" : "");
                html.append(" href=\"")
                        .append(current.up())
                        .append(page.output())
                        .append("\">");
                html.append(escaped(page.title())).append("</a></li>");
            }
            html.append("</ul></section>");
        }
        return html.toString();
    }

    /** Links to the pages before and after, in the first group that holds the page. */
    String neighbours(SitePage current) {
        for (List<SitePage> pages : groups.values()) {
            int place = pages.indexOf(current);
            if (place >= 0) {
                return "<nav class=\"neighbours\" aria-label=\"Previous and next page\">"
                        + (place > 0 ? neighbour(current, pages.get(place - 1), "prev", "← ", "") : "<span></span>")
                        + (place + 1 < pages.size() ? neighbour(current, pages.get(place + 1), "next", "", " →") : "")
                        + "</nav>";
            }
        }
        return "";
    }

    private static String neighbour(SitePage from, SitePage page, String rel, String before, String after) {
        return "<a rel=\"" + rel + "\" href=\"" + from.up() + page.output() + "\">" + before + escaped(page.title())
                + after + "</a>";
    }
}
