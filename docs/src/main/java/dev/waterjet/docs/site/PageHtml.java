package dev.waterjet.docs.site;

import static dev.waterjet.examples.chart.SvgText.escaped;

import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.html.HtmlWriter;

/** Body of one page as HTML. */
final class PageHtml {

    private final SitePage page;
    private final JavaCode code;
    private final UnaryOperator<String> target;

    /**
     * Prepares a page.
     *
     * @param page the page
     * @param code renderer of Java
     * @param target address in the site of an address in the Markdown
     */
    PageHtml(SitePage page, JavaCode code, UnaryOperator<String> target) {
        this.page = page;
        this.code = code;
        this.target = target;
    }

    String html() {
        HtmlRenderer renderer = HtmlRenderer.builder()
                .extensions(Set.of(TablesExtension.create()))
                .attributeProviderFactory(context -> (node, tag, attributes) -> decorate(node, attributes))
                .nodeRendererFactory(Special::new)
                .build();
        return renderer.render(page.document());
    }

    private void decorate(Node node, Map<String, String> attributes) {
        if (node instanceof Heading heading) {
            attributes.put("id", String.valueOf(page.ids().get(heading)));
        } else if (node instanceof Link link) {
            attributes.put("href", target.apply(link.getDestination()));
        } else if (node instanceof TableBlock) {
            attributes.put("tabindex", "0");
        }
    }

    /** Whether inline code is a formula: a dollar sign stands on each side. */
    private static boolean isFormula(Code node) {
        return node.getPrevious() instanceof Text before
                && before.getLiteral().endsWith("$")
                && node.getNext() instanceof Text after
                && after.getLiteral().startsWith("$");
    }

    /** Formulas, code and figures: the parts that differ from plain Markdown. */
    private final class Special implements NodeRenderer {

        private final HtmlWriter html;

        Special(HtmlNodeRendererContext context) {
            html = context.getWriter();
        }

        @Override
        public Set<Class<? extends Node>> getNodeTypes() {
            return Set.of(Code.class, Text.class, FencedCodeBlock.class, Image.class);
        }

        @Override
        public void render(Node node) {
            if (node instanceof Code inline) {
                inline(inline);
            } else if (node instanceof Text text) {
                text(text);
            } else if (node instanceof FencedCodeBlock block) {
                block(block);
            } else if (node instanceof Image image) {
                figure(image);
            }
        }

        private void text(Text node) {
            String text = node.getLiteral();
            if (node.getNext() instanceof Code next && isFormula(next)) {
                text = text.substring(0, text.length() - 1);
            }
            if (node.getPrevious() instanceof Code before && isFormula(before)) {
                text = text.substring(1);
            }
            html.text(text);
        }

        private void inline(Code node) {
            String literal = node.getLiteral();
            if (isFormula(node)) {
                html.raw("<span class=\"math\">\\(" + escaped(literal) + "\\)</span>");
                return;
            }
            String link = node.getParent() instanceof Link ? null : code.link(literal);
            html.raw((link == null ? "" : "<a href=\"" + link + "\">") + "<code>" + escaped(literal) + "</code>"
                    + (link == null ? "" : "</a>"));
        }

        private void block(FencedCodeBlock node) {
            String language = node.getInfo().strip();
            String literal = node.getLiteral().stripTrailing();
            html.line();
            switch (language) {
                case "math" -> html.raw("<div class=\"math\">\\[" + escaped(literal) + "\\]</div>");
                case "java" ->
                    html.raw("<pre class=\"java\" tabindex=\"0\"><code>" + code.html(literal) + "</code></pre>");
                default ->
                    html.raw("<pre class=\"" + (language.isEmpty() ? "text" : escaped(language))
                            + "\" tabindex=\"0\"><code>" + escaped(literal) + "</code></pre>");
            }
            html.line();
        }

        private void figure(Image node) {
            String light = target.apply(node.getDestination());
            String words = escaped(SitePage.words(node));
            if (light.endsWith(".svg") || light.endsWith(".png")) {
                html.raw("<img class=\"figure light\" alt=\"" + words + "\" src=\"" + light + "\">"
                        + "<img class=\"figure dark\" alt=\"" + words + "\" src=\""
                        + light.replace("figures/", "figures/dark/") + "\">");
            } else {
                html.raw("<img class=\"figure\" alt=\"" + words + "\" src=\"" + light + "\">");
            }
        }
    }
}
