package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.seacairn.InputException;
import org.seacairn.export.Styles;
import org.seacairn.report.Symbolizer.Font;
import org.seacairn.report.Symbolizer.Halo;
import org.seacairn.report.Symbolizer.Mark;
import org.seacairn.report.Symbolizer.Paint;
import org.seacairn.report.Symbolizer.Placement;
import org.seacairn.report.Symbolizer.Shape;
import org.seacairn.report.Symbolizer.Stroke;

class LayerStyleTest {
    static final List<String> NAMES = Styles.NAMES;
    private static final StyleSet BUNDLED = StyleSet.bundled();

    /** A style with one rule. */
    private static String sld(String rule) {
        return """
                <StyledLayerDescriptor version="1.0.0" xmlns="http://www.opengis.net/sld" xmlns:ogc="http://www.opengis.net/ogc">
                <NamedLayer><Name>wrecks</Name><UserStyle><Title>Wrecks</Title><FeatureTypeStyle>
                %s
                </FeatureTypeStyle></UserStyle></NamedLayer></StyledLayerDescriptor>
                """.formatted(rule);
    }

    private static LayerStyle read(String text) {
        return LayerStyle.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "wrecks.sld");
    }

    private static Symbolizer drawn(String symbolizer) {
        return read(sld("<Rule>" + symbolizer + "</Rule>")).rules().get(0).symbolizers().get(0);
    }

    @ParameterizedTest
    @FieldSource("NAMES")
    void bundledStyleIsReadWhole(String file) {
        String name = file.replace(".sld", "");
        LayerStyle style = BUNDLED.style(name);
        assertEquals(name, style.name());
        assertEquals(false, style.title().isEmpty());
        style.rules().forEach(rule -> assertEquals(false, rule.symbolizers().isEmpty()));
    }

    @Test
    void symbolizersHaveWhatTheFileSays() {
        Paint ink = new Paint(0x1a1a1a, 1);
        Paint white = new Paint(0xffffff, 1);
        assertEquals(List.of(
                new Symbolizer.Point(new Mark(Shape.CIRCLE, Optional.of(white), Optional.of(new Stroke(ink, 2, List.of())), 9)),
                new Symbolizer.Text("site", new Font("sans-serif", 11, false, false), ink, Optional.of(new Halo(white, 1.5)),
                        new Placement.AtPoint(0, 0.5, 8, 0))), BUNDLED.style("sites").rules().get(0).symbolizers());
        Paint rust = new Paint(0x97471d, 1);
        assertEquals(List.of(new Symbolizer.Area(Optional.of(new Paint(0x97471d, 0.15)), Optional.of(new Stroke(rust, 1.5, List.of(7.0, 4.0))))),
                BUNDLED.style("keep_off_buffers").rulesFor(Map.of("confirmed", "false")).get(0).symbolizers());
        assertEquals("#1a1a1a", ink.hex());
        assertEquals("#00000f", new Paint(15, 1).hex());
    }

    /** OGC 02-070, 11.3 to 11.5: what applies where an element is left out. */
    @Test
    void whatIsLeftOutIsAsTheStandardSays() {
        assertEquals(new Symbolizer.Line(new Stroke(new Paint(0, 1), 1, List.of())), drawn("<LineSymbolizer><Stroke/></LineSymbolizer>"));
        assertEquals(new Symbolizer.Area(Optional.of(new Paint(0x808080, 1)), Optional.empty()), drawn("<PolygonSymbolizer><Fill/></PolygonSymbolizer>"));
        assertEquals(new Symbolizer.Point(new Mark(Shape.SQUARE, Optional.empty(), Optional.empty(), 6)),
                drawn("<PointSymbolizer><Graphic><Mark/></Graphic></PointSymbolizer>"));
    }

    @ParameterizedTest
    @CsvSource({"pass, Pass", "fail, Fail", "no data, No data", "PASS,", ","})
    void rulesAreThoseWhoseFilterMatches(String verdict, String title) {
        Map<String, String> properties = verdict == null ? Map.of() : Map.of("verdict", verdict);
        assertEquals(title == null ? List.of() : List.of(title), BUNDLED.style("review").rulesFor(properties).stream().map(StyleRule::title).toList());
    }

    @ParameterizedTest
    @CsvSource({"keep-off, 0, First keep-off layer", "keep-off, 4, Fifth keep-off layer", "keep-off, 5, Further keep-off layer",
        "keep-off, 31, Further keep-off layer", "reef, 0, Reef", "permit-area, 0, Permit area", "coverage, 2, Survey coverage"})
    void layersOfThePlanHaveARuleEach(String role, String index, String title) {
        assertEquals(List.of(title),
                BUNDLED.style("features").rulesFor(Map.of("role", role, "index", index)).stream().map(StyleRule::title).toList());
    }

    @ParameterizedTest
    @CsvSource({"true, Keep-off", "false, 'Keep-off, rule not confirmed'", ", 'Keep-off, rule not confirmed'"})
    void otherwiseIsForThoseThatNoRuleIsFor(String confirmed, String title) {
        Map<String, String> properties = confirmed == null ? Map.of() : Map.of("confirmed", confirmed);
        assertEquals(List.of(title), BUNDLED.style("keep_off_buffers").rulesFor(properties).stream().map(StyleRule::title).toList());
    }

    @ParameterizedTest
    @CsvSource({"PropertyIsEqualTo, 5, true", "PropertyIsEqualTo, 5.0, true", "PropertyIsEqualTo, 50, false", "PropertyIsEqualTo, x, false",
        "PropertyIsNotEqualTo, 5, false", "PropertyIsNotEqualTo, x, true", "PropertyIsNotEqualTo, , false",
        "PropertyIsLessThan, 10, false", "PropertyIsLessThan, 4, true", "PropertyIsLessThan, 5, false", "PropertyIsLessThan, 4d, false",
        "PropertyIsGreaterThan, 10, true", "PropertyIsGreaterThan, 5, false", "PropertyIsGreaterThan, NaN, false",
        "PropertyIsLessThanOrEqualTo, 5, true", "PropertyIsLessThanOrEqualTo, 5.1, false",
        "PropertyIsGreaterThanOrEqualTo, 5, true", "PropertyIsGreaterThanOrEqualTo, 4.9, false", "PropertyIsGreaterThanOrEqualTo, , false"})
    void comparisonIsOfNumbersWhereBothAre(String operator, String value, boolean expected) {
        LayerStyle style = read(sld("<Rule><ogc:Filter><ogc:%s><ogc:PropertyName>n</ogc:PropertyName><ogc:Literal>5</ogc:Literal></ogc:%s></ogc:Filter></Rule>"
                .formatted(operator, operator)));
        assertEquals(expected, !style.rulesFor(value == null ? Map.of() : Map.of("n", value)).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"And, 1, 1, true", "And, 1, 0, false", "Or, 0, 1, true", "Or, 0, 0, false"})
    void conditionsAreJoinedAndTurnedRound(String join, String a, String b, boolean expected) {
        String condition = "<ogc:PropertyIsEqualTo><ogc:PropertyName>%s</ogc:PropertyName><ogc:Literal>1</ogc:Literal></ogc:PropertyIsEqualTo>";
        String both = "<ogc:" + join + ">" + condition.formatted("a") + condition.formatted("b") + "</ogc:" + join + ">";
        Map<String, String> properties = Map.of("a", a, "b", b);
        assertEquals(expected, !read(sld("<Rule><ogc:Filter>" + both + "</ogc:Filter></Rule>")).rulesFor(properties).isEmpty());
        assertEquals(!expected, !read(sld("<Rule><ogc:Filter><ogc:Not>" + both + "</ogc:Not></ogc:Filter></Rule>")).rulesFor(properties).isEmpty());
    }

    @Test
    void geometryIsDrawnByTheSymbolizersThatSuitIt() {
        StyleRule reef = BUNDLED.style("features").rulesFor(Map.of("role", "reef", "index", "0")).get(0);
        assertEquals(List.of(Symbolizer.Point.class), reef.symbolizersFor(0).stream().map(Object::getClass).toList());
        assertEquals(List.of(Symbolizer.Line.class, Symbolizer.Line.class), reef.symbolizersFor(1).stream().map(Object::getClass).toList());
        assertEquals(List.of(Symbolizer.Area.class, Symbolizer.Line.class, Symbolizer.Line.class),
                reef.symbolizersFor(2).stream().map(Object::getClass).toList());
    }

    @Test
    void legendHasTheRulesWithATitle() {
        assertEquals(List.of("Pass", "Marginal", "No data", "Fail"), BUNDLED.style("review").legend().stream().map(StyleRule::title).toList());
        assertEquals(List.of(), BUNDLED.style("score").legend());
        assertEquals(List.of("0", "0.25", "0.5", "0.75", "1"), BUNDLED.style("score").ramp().orElseThrow().stops().stream().map(ColorRamp.Stop::label).toList());
        assertEquals(Optional.empty(), BUNDLED.style("review").ramp());
    }

    // 0.85 of 255 is 216.75, so d9; halfway from de to 99 is bb.8, from c4 to aa b7, from 7f to 69 74.
    @ParameterizedTest
    @CsvSource({"0, d9dec47f", "-3, d9dec47f", "0.125, d9bcb774", "0.25, d999aa69", "1, d90c4669", "7, d90c4669", "NaN, 00000000"})
    void colorOfTheScoreIsLinearBetweenStops(double score, String expected) {
        assertEquals(expected, String.format("%08x", BUNDLED.style("score").ramp().orElseThrow().colorAt(score)));
    }

    @ParameterizedTest
    @CsvSource({"0, 00ffffff", "1, b3ffffff", "6, b3ffffff", "4294967295, b3ffffff"})
    void veilIsEven(double mask, String expected) {
        assertEquals(expected, String.format("%08x", BUNDLED.style("reasons").ramp().orElseThrow().colorAt(mask)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<Rule><MinScaleDenominator>5</MinScaleDenominator></Rule>|the element \"MinScaleDenominator\" in \"Rule\" is none that the map can draw; remove it, or "
            + "write one of: Name, Title, Abstract, Filter, ElseFilter, PolygonSymbolizer, LineSymbolizer, PointSymbolizer, TextSymbolizer, RasterSymbolizer",
        "<Rule><LineSymbolizer/></Rule>|\"LineSymbolizer\" has no \"Stroke\"; write one",
        "<Rule><Title>a</Title><Title>b</Title></Rule>|the element \"Title\" stands in \"Rule\" more than once; keep one",
        "<Rule>stray</Rule>|has the text \"stray\" where only elements belong; remove it",
        "<Rule><Title>a<b/></Title></Rule>|the element \"b\" stands in \"Title\", where only a text belongs; write the text alone",
        "<Rule><LineSymbolizer><Stroke width=\"2\"/></LineSymbolizer></Rule>|the attribute \"width\" of \"Stroke\" is none that the map can draw; remove it",
        "<Rule><LineSymbolizer><Stroke><CssParameter name=\"stroke\">red</CssParameter></Stroke></LineSymbolizer></Rule>|stroke is \"red\"; write a colour as \"#rrggbb\"",
        "<Rule><LineSymbolizer><Stroke><CssParameter name=\"stroke-linecap\">round</CssParameter></Stroke></LineSymbolizer></Rule>|the CssParameter "
            + "\"stroke-linecap\" in \"Stroke\" is none that the map can draw; remove it, or write one of: stroke, stroke-width, stroke-opacity, stroke-dasharray",
        "<Rule><LineSymbolizer><Stroke><CssParameter name=\"stroke-width\">NaN</CssParameter></Stroke></LineSymbolizer></Rule>|"
            + "stroke-width is \"NaN\"; write a number from 0 to 200",
        "<Rule><LineSymbolizer><Stroke><CssParameter name=\"stroke-dasharray\">4 -1</CssParameter></Stroke></LineSymbolizer></Rule>|"
            + "stroke-dasharray is \"-1\"; write a number from 0.1 to 200",
        "<Rule><PointSymbolizer><Graphic><Mark><WellKnownName>pentagon</WellKnownName></Mark></Graphic></PointSymbolizer></Rule>|"
            + "WellKnownName is \"pentagon\"; write one of: square, circle, triangle, star, cross, x",
        "<Rule><PointSymbolizer><Graphic><ExternalGraphic/></Graphic></PointSymbolizer></Rule>|the element \"ExternalGraphic\" in \"Graphic\" is none that the map "
            + "can draw; remove it, or write one of: Mark, Size",
        "<Rule><TextSymbolizer><Label>depth <ogc:PropertyName>d</ogc:PropertyName></Label></TextSymbolizer></Rule>|has the text \"depth\" where only elements belong; remove it",
        "<Rule><TextSymbolizer><Label><ogc:PropertyName>d</ogc:PropertyName></Label><Font><CssParameter name=\"font-family\">a;} * {</CssParameter></Font></TextSymbolizer></Rule>|"
            + "font-family is \"a;} * {\"; write one name of letters, digits, spaces and hyphens",
        "<Rule><ElseFilter/><ogc:Filter><ogc:Not/></ogc:Filter></Rule>|\"Not\" has 0 conditions; write one, or join them by \"And\" or \"Or\"",
        "<Rule><ogc:Filter><ogc:PropertyIsLike/></ogc:Filter></Rule>|the element \"PropertyIsLike\" in \"Filter\" is none that the map can draw; remove it, or write one of: "
            + "PropertyIsEqualTo, PropertyIsNotEqualTo, PropertyIsLessThan, PropertyIsGreaterThan, PropertyIsLessThanOrEqualTo, PropertyIsGreaterThanOrEqualTo, And, Or, Not",
        "<Rule><RasterSymbolizer><ColorMap><ColorMapEntry color=\"#ffffff\" quantity=\"1\"/><ColorMapEntry color=\"#ffffff\" quantity=\"1\"/></ColorMap></RasterSymbolizer></Rule>|"
            + "quantity is \"1\", no more than the one before; write them rising",
        "<Rule><RasterSymbolizer><ColorMap><ColorMapEntry color=\"#ffffff\"/></ColorMap></RasterSymbolizer></Rule>|"
            + "quantity is missing; write a number from -10000000000 to 10000000000"})
    void whatIsNotKnownIsRefused(String rule, String problem) {
        assertEquals("wrecks.sld, line 3: " + problem, assertThrows(InputException.class, () -> read(sld(rule))).getMessage());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<!DOCTYPE a [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><StyledLayerDescriptor version=\"1.0.0\"/>|"
            + "wrecks.sld, line 1: has a DOCTYPE, as a web page has and SLD needs not; export it again, or delete the DOCTYPE",
        "<StyledLayerDescriptor version=\"1.1.0\"/>|wrecks.sld, line 1: version is \"1.1.0\"; write the style in SLD \"1.0.0\"",
        "<StyledLayerDescriptor/>|wrecks.sld, line 1: version is missing; write the style in SLD \"1.0.0\"",
        "<StyledLayerDescriptor version=\"1.0.0\"/>|wrecks.sld, line 1: \"StyledLayerDescriptor\" has no \"NamedLayer\"; write one",
        "<html/>|wrecks.sld, line 1: its outermost element is \"html\" and not \"StyledLayerDescriptor\", so this is no SLD; export it as SLD"})
    void whatIsNoStyleIsRefused(String text, String message) {
        assertEquals(message, assertThrows(InputException.class, () -> read(text)).getMessage());
    }

    @Test
    void folderReplacesSomeStyles(@TempDir Path folder) throws Exception {
        Files.writeString(folder.resolve("sites.sld"), sld("<Rule><Title>Mine</Title></Rule>"));
        Files.writeString(folder.resolve("readme.txt"), "none of ours");
        StyleSet set = StyleSet.of(folder);
        assertEquals("Mine", set.style("sites").rules().get(0).title());
        assertEquals(BUNDLED.style("score"), set.style("score"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "sites.sld|<a|sites.sld, line 1: is no proper XML (",
        "scroe.sld|<a/>|scroe.sld: is the style of no layer of the map; remove it, or name it one of: approaches.sld, ",
        "sites.txt|-|mine: has no style (.sld); name a folder with one or more of: approaches.sld, "})
    void folderWithoutAStyleThatCanBeUsedIsRefused(String name, String text, String message, @TempDir Path parent) throws Exception {
        Path folder = Files.createDirectory(parent.resolve("mine"));
        Files.writeString(folder.resolve(name), text);
        InputException refusal = assertThrows(InputException.class, () -> StyleSet.of(folder));
        assertEquals(1, refusal.problems().size());
        assertEquals(message, refusal.getMessage().substring(0, Math.min(message.length(), refusal.getMessage().length())));
    }

    @Test
    void folderThatIsNoneIsRefused(@TempDir Path parent) {
        assertEquals("none: cannot be listed (NoSuchFileException); name a folder of styles that can be read",
                assertThrows(InputException.class, () -> StyleSet.of(parent.resolve("none"))).getMessage());
    }
}
