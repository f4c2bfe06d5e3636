package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.InputException;

/** Reads a {@link LayerStyle}: one layer with one style of one {@code FeatureTypeStyle}. */
final class StyleReader {
    private final StyleElements in;
    private final SymbolizerReader symbolizers;

    private StyleReader(StyleElements in) {
        this.in = in;
        this.symbolizers = new SymbolizerReader(in);
    }

    static LayerStyle read(InputStream stream, String fileName) {
        try {
            StyleElements in = new StyleElements(stream, fileName);
            LayerStyle style = new StyleReader(in).descriptor();
            in.end();
            return style;
        } catch (IOException e) {
            throw new InputException(fileName + ": cannot be read (" + e.getMessage() + "); copy it again", e);
        }
    }

    private LayerStyle descriptor() {
        in.attributes("version");
        if (!"1.0.0".equals(in.attribute("version"))) {
            throw in.problem("version is " + (in.attribute("version") == null ? "missing" : "\"" + StyleElements.shown(in.attribute("version")) + "\"")
                    + "; write the style in SLD \"1.0.0\"");
        }
        StyleElements.Children children = in.childrenBesideAttributes("Name", "Title", "Abstract", "NamedLayer");
        LayerStyle style = null;
        while (children.next()) {
            switch (in.name()) {
                case "NamedLayer" -> style = layer();
                default -> in.text();
            }
        }
        children.require("NamedLayer");
        return style;
    }

    private LayerStyle layer() {
        StyleElements.Children children = in.children("Name", "UserStyle");
        String name = "";
        LayerStyle style = null;
        while (children.next()) {
            switch (in.name()) {
                case "Name" -> name = in.text();
                default -> style = userStyle();
            }
        }
        children.require("Name");
        children.require("UserStyle");
        return new LayerStyle(name, style.title(), style.rules());
    }

    private LayerStyle userStyle() {
        StyleElements.Children children = in.children("Name", "Title", "Abstract", "IsDefault", "FeatureTypeStyle");
        String title = "";
        List<StyleRule> rules = List.of();
        while (children.next()) {
            switch (in.name()) {
                case "Title" -> title = in.text();
                case "FeatureTypeStyle" -> rules = rules();
                default -> in.text();
            }
        }
        children.require("FeatureTypeStyle");
        return new LayerStyle("", title, rules);
    }

    private List<StyleRule> rules() {
        StyleElements.Children children = in.children("Name", "Title", "Abstract", "Rule*");
        List<StyleRule> rules = new ArrayList<>();
        while (children.next()) {
            switch (in.name()) {
                case "Rule" -> rules.add(rule());
                default -> in.text();
            }
        }
        if (rules.isEmpty()) {
            throw in.problem("\"FeatureTypeStyle\" has no \"Rule\"; write one");
        }
        return rules;
    }

    private StyleRule rule() {
        StyleElements.Children children = in.children("Name", "Title", "Abstract", "Filter", "ElseFilter", "PolygonSymbolizer*", "LineSymbolizer*",
                "PointSymbolizer*", "TextSymbolizer*", "RasterSymbolizer");
        String title = "";
        StyleFilter filter = null;
        boolean otherwise = false;
        List<Symbolizer> drawn = new ArrayList<>();
        while (children.next()) {
            switch (in.name()) {
                case "Title" -> title = in.text();
                case "Filter" -> filter = new StyleFilterReader(in).filter();
                case "ElseFilter" -> {
                    in.attributes();
                    in.emptyElement();
                    otherwise = true;
                }
                case "Name", "Abstract" -> in.text();
                default -> drawn.add(symbolizers.symbolizer());
            }
        }
        if (otherwise && filter != null) {
            throw in.problem("\"Rule\" has a \"Filter\" and an \"ElseFilter\"; keep one");
        }
        return new StyleRule(title, Optional.ofNullable(filter), otherwise, drawn);
    }
}
