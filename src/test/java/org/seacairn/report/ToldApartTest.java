package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seacairn.export.Styles;
import org.seacairn.report.Symbolizer.Area;
import org.seacairn.report.Symbolizer.Line;
import org.seacairn.report.Symbolizer.Mark;
import org.seacairn.report.Symbolizer.Paint;
import org.seacairn.report.Symbolizer.Point;
import org.seacairn.report.Symbolizer.Stroke;
import org.seacairn.report.Symbolizer.Text;

/**
 * All styles in one picture: each thing can be told from every other, by every kind of colour vision and in grey print. The thresholds are
 * ours: about 2.3 is the least difference that is seen at all side by side (Mahy et al. 1994, from memory); thin lines and small marks need several
 * times that.
 */
class ToldApartTest {
    private static final StyleSet STYLES = StyleSet.bundled();
    private static final double[] DEPTHS_M = {5, 40, 60, 80, 120, 200, 600, 3000};

    /** Grounds and symbols that differ in colour only. */
    private static final double FAR_APART = 20;
    /** In grey only the lightness is left. */
    private static final double FAR_APART_IN_GREY = 9;
    /** A thing on its ground. */
    private static final double STANDS_OUT = 25;

    /** A drawn colour over an opaque one. */
    private static int over(int argb, int ground) {
        double share = (argb >>> 24) / 255.0;
        int mixed = 0;
        for (int shift = 0; shift < 24; shift += 8) {
            mixed |= (int) Math.round(share * (argb >> shift & 0xff) + (1 - share) * (ground >> shift & 0xff)) << shift;
        }
        return mixed;
    }

    private static int depth(double depthM) {
        return STYLES.style("depth").ramp().orElseThrow().colorAt(depthM) & 0xffffff;
    }

    private static List<Integer> veiled() {
        return DoubleStream.of(DEPTHS_M).mapToObj(d -> over(STYLES.style("reasons").ramp().orElseThrow().colorAt(1), depth(d))).toList();
    }

    private static List<Integer> scored(double score) {
        return DoubleStream.of(DEPTHS_M).mapToObj(d -> over(STYLES.style("score").ramp().orElseThrow().colorAt(score), depth(d))).toList();
    }

    private static List<Integer> grounds() {
        List<Integer> all = new ArrayList<>(veiled());
        DoubleStream.of(0, 0.25, 0.5, 0.75, 1).forEach(score -> all.addAll(scored(score)));
        return all;
    }

    @ParameterizedTest
    @EnumSource
    void rampsFallInLightness(Vision vision) {
        for (int i = 1; i < DEPTHS_M.length; i++) {
            assertTrue(vision.lightness(depth(DEPTHS_M[i])) < vision.lightness(depth(DEPTHS_M[i - 1])) - 1, vision + ", depth " + DEPTHS_M[i]);
        }
        for (int ground = 0; ground < DEPTHS_M.length; ground++) {
            for (int step = 1; step <= 20; step++) {
                double before = vision.lightness(scored((step - 1) / 20.0).get(ground));
                double here = vision.lightness(scored(step / 20.0).get(ground));
                assertTrue(here < before - 1, vision + ", score " + step / 20.0 + ": L* " + here + " after " + before);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void ruledOutGroundIsPalerThanAnyScore(Vision vision) {
        double palestScore = scored(0).stream().mapToDouble(vision::lightness).max().orElseThrow();
        double darkestVeil = veiled().stream().mapToDouble(vision::lightness).min().orElseThrow();
        assertTrue(darkestVeil - palestScore > FAR_APART_IN_GREY - 1.5, vision + ": L* " + darkestVeil + " and " + palestScore);
    }

    /** At least one of the colours of a symbol stands out from whatever lies under it. */
    @ParameterizedTest
    @EnumSource
    void symbolStandsOutFromItsGround(Vision vision) {
        for (Thing thing : things()) {
            double least = thing.name().startsWith("graticule") ? 10 : STANDS_OUT;
            // What is kept off is ruled out, on both sides of the line where an allowance is added.
            for (int ground : thing.style().equals("keep_off_buffers") ? veiled() : grounds()) {
                double most = thing.paints().stream()
                        .mapToDouble(paint -> vision.difference(over((int) Math.round(255 * paint.opacity()) << 24 | paint.rgb(), ground), ground)).max().orElseThrow();
                assertTrue(most >= least, vision + ", " + thing.name() + " on " + Integer.toHexString(ground) + ": " + most);
            }
        }
    }

    /** Any two marks, any two lines (outlines among them): by form, or else by a colour that every kind of vision and grey print tell apart. */
    @Test
    void symbolsAreToldApart() {
        List<Thing> things = things();
        List<String> alike = new ArrayList<>();
        for (int i = 0; i < things.size(); i++) {
            for (int j = i + 1; j < things.size(); j++) {
                Thing a = things.get(i);
                Thing b = things.get(j);
                if (a.mark() == b.mark() && !sameThing(a, b) && !differInForm(a, b) && !differInColor(a, b)) {
                    alike.add(a.name() + " and " + b.name());
                }
            }
        }
        assertEquals(List.of(), alike);
    }

    private static boolean differInColor(Thing a, Thing b) {
        return Stream.of(Vision.values()).allMatch(vision -> vision.difference(a.color(), b.color()) >= FAR_APART);
    }

    private static boolean differInForm(Thing a, Thing b) {
        if (a.mark()) {
            return !a.form().equals(b.form()) || ratio(a.widthPx(), b.widthPx()) >= 1.5;
        }
        boolean breaks = a.dashPx().size() != b.dashPx().size() || ratio(period(a), period(b)) >= 1.5;
        return breaks || !a.form().equals(b.form()) || ratio(a.widthPx(), b.widthPx()) >= 1.5;
    }

    private static double period(Thing thing) {
        return thing.dashPx().isEmpty() ? 1 : thing.dashPx().stream().mapToDouble(d -> d).sum();
    }

    private static double ratio(double a, double b) {
        return Math.max(a, b) / Math.min(a, b);
    }

    /** A verdict looks the same wherever it is given. */
    private static boolean sameThing(Thing a, Thing b) {
        Set<String> verdicts = Set.of("approaches", "proposed_points", "proposed_polygons", "review");
        return verdicts.contains(a.style()) && verdicts.contains(b.style()) && a.title().equals(b.title());
    }

    /** @param form kind of mark and whether it is full; or what a line has under it */
    private record Thing(String style, String title, boolean mark, String form, int color, double widthPx, List<Double> dashPx, List<Paint> paints) {
        String name() {
            return style + "/" + title;
        }
    }

    private static List<Thing> things() {
        List<Thing> things = new ArrayList<>();
        for (String file : Styles.NAMES) {
            LayerStyle style = STYLES.style(file.replace(".sld", ""));
            for (StyleRule rule : style.rules()) {
                List<Stroke> strokes = new ArrayList<>();
                List<Paint> paints = new ArrayList<>();
                boolean filled = false;
                for (Symbolizer symbolizer : rule.symbolizers()) {
                    if (symbolizer instanceof Point point) {
                        things.add(markOf(style, rule, point.mark()));
                    } else if (symbolizer instanceof Line line) {
                        strokes.add(line.stroke());
                    } else if (symbolizer instanceof Area area) {
                        filled |= area.fill().isPresent();
                        area.stroke().ifPresent(strokes::add);
                    }
                }
                strokes.forEach(stroke -> paints.add(stroke.paint()));
                if (!strokes.isEmpty()) {
                    Stroke top = strokes.get(strokes.size() - 1);
                    boolean light = top.paint().rgb() == 0xffffff;
                    boolean band = strokes.size() > 1 && strokes.get(0).paint().rgb() != 0xffffff;
                    things.add(new Thing(style.name(), rule.title(), false, "filled " + filled + ", light core " + light + ", band " + band,
                            top.paint().rgb(), top.widthPx(), top.dashPx(), paints));
                }
            }
        }
        return things;
    }

    private static Thing markOf(LayerStyle style, StyleRule rule, Mark mark) {
        Paint fill = mark.fill().orElseThrow();
        Paint rim = mark.stroke().orElseThrow().paint();
        boolean full = fill.rgb() != 0xffffff;
        return new Thing(style.name(), rule.title(), true, mark.shape() + (full ? " full" : " open"), full ? fill.rgb() : rim.rgb(), mark.sizePx(), List.of(),
                List.of(fill, rim));
    }

    /** WCAG 2.1, 1.4.3: 4.5 to 1. A text has its halo, or stands at the frame on white. */
    @Test
    void textsHaveContrast() {
        int texts = 0;
        for (String file : Styles.NAMES) {
            for (StyleRule rule : STYLES.style(file.replace(".sld", "")).rules()) {
                for (Symbolizer symbolizer : rule.symbolizers()) {
                    if (symbolizer instanceof Text text) {
                        int ground = text.halo().map(halo -> halo.fill().rgb()).orElse(0xffffff);
                        assertTrue(Vision.contrast(text.fill().rgb(), ground) >= 4.5, file);
                        texts++;
                    }
                }
            }
        }
        assertTrue(texts >= 12, texts + " texts");
    }

    /** Published values: CIELAB of sRGB red is 53.24, 80.09, 67.20 (D65); black on white has a contrast of 21 to 1. */
    @Test
    void measuresAreThoseOfTheStandards() {
        double[] red = Vision.NORMAL.lab(0xff0000);
        assertEquals(53.24, red[0], 0.01);
        assertEquals(80.09, red[1], 0.01);
        assertEquals(67.20, red[2], 0.01);
        assertEquals(21, Vision.contrast(0, 0xffffff), 1e-9);
        // Whites and greys look the same to everyone: the rows of each matrix sum to 1.
        for (Vision vision : Vision.values()) {
            assertEquals(0, vision.difference(0x777777, 0x777777));
            assertEquals(Vision.NORMAL.lightness(0x777777), vision.lightness(0x777777), 0.01, vision.toString());
        }
    }
}
