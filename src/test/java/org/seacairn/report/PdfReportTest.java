package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Path2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.plan.SitingPlan.Display;

/** The PDF of a page, read back by PDFBox. */
class PdfReportTest {
    @TempDir Path folder;

    private record Part(String id, String heading, Consumer<Html> content) implements Section {
        @Override
        public void write(Html html) {
            content.accept(html);
        }
    }

    private static Page page(String title, Section... sections) {
        return new Page(title, "Trial", "0.0.0", List.of(sections));
    }

    private static Part table(List<String> names) {
        return new Part("names", "Names", html -> new PageTable<String>("A table").name("Name", name -> name)
                .figure("Figure", name -> "12.5").cell("Bar", (h, name) -> Bar.share(h, 0.5)).write(html, names));
    }

    private static List<String> numbered(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> "Mound " + i + " end").toList();
    }

    private PDDocument written(Page page, Display display) throws IOException {
        Path file = folder.resolve("report.pdf");
        PdfReport.write(page, display, file);
        return Loader.loadPDF(file.toFile());
    }

    private static List<String> pages(PDDocument pdf) throws IOException {
        List<String> pages = new ArrayList<>();
        for (int i = 1; i <= pdf.getNumberOfPages(); i++) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(i);
            stripper.setEndPage(i);
            pages.add(stripper.getText(pdf).replaceAll("\\s+", " "));
        }
        return pages;
    }

    @Test
    void everySheetHasTheCautionItsNumberAndTheHeadsOfItsTable() throws IOException {
        try (PDDocument pdf = written(page("Trial", table(numbered(200))), Display.METRIC)) {
            List<String> pages = pages(pdf);
            assertTrue(pages.size() >= 3, "sheets: " + pages.size());
            for (int i = 0; i < pages.size(); i++) {
                assertTrue(pages.get(i).contains("Screening aid, not for navigation, no permit; the permitting authority decides."), pages.get(i));
                assertTrue(pages.get(i).contains(i + 1 + " of " + pages.size()), pages.get(i));
                assertTrue(pages.get(i).contains("Name Figure Bar"), pages.get(i));
            }
            String all = String.join(" ", pages);
            numbered(200).forEach(name -> assertTrue(all.contains(name), name));
        }
    }

    @Test
    void sizeLanguageTitleAndBookmarks() throws IOException {
        Part second = new Part("second", "Second heading", html -> html.element("p", "nothing"));
        try (PDDocument pdf = written(page("Trial", table(numbered(3)), second), Display.METRIC)) {
            assertSize(PDRectangle.A4, pdf.getPage(0).getMediaBox());
            assertEquals("en", pdf.getDocumentCatalog().getLanguage());
            assertEquals("Trial – Trial – Seacairn", pdf.getDocumentInformation().getTitle());
            assertEquals(null, pdf.getDocumentInformation().getCreationDate());
            List<String> marks = new ArrayList<>();
            for (PDOutlineItem item : pdf.getDocumentCatalog().getDocumentOutline().children()) {
                marks.add(item.getTitle());
            }
            assertEquals(List.of("Names", "Second heading"), marks);
        }
        try (PDDocument pdf = written(page("Trial", table(numbered(3))), Display.US)) {
            assertSize(PDRectangle.LETTER, pdf.getPage(0).getMediaBox());
        }
    }

    private static void assertSize(PDRectangle expected, PDRectangle box) {
        assertEquals(expected.getWidth(), box.getWidth(), 0.5);
        assertEquals(expected.getHeight(), box.getHeight(), 0.5);
    }

    @Test
    void everyFontIsEmbedded() throws IOException {
        try (PDDocument pdf = written(page("Trial", table(numbered(3))), Display.METRIC)) {
            for (PDPage sheet : pdf.getPages()) {
                for (COSName name : sheet.getResources().getFontNames()) {
                    assertTrue(sheet.getResources().getFont(name).isEmbedded(), name.getName());
                }
            }
        }
    }

    @Test
    void blockIsNotSplit() throws IOException {
        Part blocks = new Part("blocks", "Blocks", html -> IntStream.range(0, 30).forEach(i -> {
            html.open("article", "class", "block", "id", "b" + i).element("h3", "Block " + i + " begins");
            IntStream.range(0, 9).forEach(line -> html.element("p", "line " + line));
            html.element("p", "Block " + i + " ends").close("article");
        }));
        try (PDDocument pdf = written(page("Trial", blocks), Display.METRIC)) {
            List<String> pages = pages(pdf);
            assertTrue(pages.size() > 5, "sheets: " + pages.size());
            for (int i = 0; i < 30; i++) {
                String begins = "Block " + i + " begins";
                String ends = "Block " + i + " ends";
                assertTrue(pages.stream().anyMatch(text -> text.contains(begins) && text.contains(ends)), begins);
            }
        }
    }

    @Test
    void samePageGivesTheSameBytes() throws IOException {
        Page page = page("Trial", table(numbered(50)), new Part("plot", "Plot", html -> html.ready(PLOT)));
        PdfReport.write(page, Display.METRIC, folder.resolve("a.pdf"));
        PdfReport.write(page, Display.METRIC, folder.resolve("b.pdf"));
        assertArrayEquals(Files.readAllBytes(folder.resolve("a.pdf")), Files.readAllBytes(folder.resolve("b.pdf")));
    }

    private static final String PLOT = "<?xml version=\"1.0\" encoding=\"UTF-8\"?><svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300\" height=\"100\""
            + " viewBox=\"0 0 300 100\"><rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>"
            + "<path d=\"M10 10L90 90m-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0z\" fill=\"none\" stroke=\"#222222\" stroke-dasharray=\"4 2\"/>"
            + "<text x=\"50\" y=\"50\" text-anchor=\"middle\" font-size=\"12\">Letters in a drawing</text></svg>";

    @Test
    void textOfADrawingIsText() throws IOException {
        try (PDDocument pdf = written(page("Trial", new Part("plot", "Plot", html -> html.ready(PLOT))), Display.METRIC)) {
            assertTrue(pages(pdf).get(0).contains("Letters in a drawing"), pages(pdf).get(0));
        }
    }

    @Test
    void hostileNamesBreakNothing() throws IOException {
        String script = "<script>alert(1)</script>\"'><img src=\"https://example.org/x.png\"/>";
        List<String> names = List.of(script, "\u0634\u0639\u0628 \u0645\u0631\u062c\u0627\u0646", "Reef \uD83D\uDC1F one", "x".repeat(10_000),
                "Mélèze Łódź Ægir Øyå Ștefăniță", "e\u0301 combined", "Ναύπλιο Ёлка", "\uD800 lone", "\u202Eevil");
        try (PDDocument pdf = written(page(script, table(names)), Display.US)) {
            String text = String.join(" ", pages(pdf));
            assertTrue(text.contains("<script>alert(1)</script>"), text);
            assertTrue(text.contains("Mélèze Łódź Ægir Øyå Ștefăniță"), text);
            assertTrue(text.contains("Ναύπλιο Ёлка"), text);
            assertTrue(text.contains("Reef \u25A1 one"), text);
            assertTrue(text.contains("\u25A1\u25A1\u25A1 \u25A1"), text);
            assertTrue(text.contains("stands for a letter that this file's font does not have"), text);
            assertTrue(pdf.getPage(0).getAnnotations().isEmpty());
        }
    }

    @Test
    void longNameStaysOnTheSheet() throws IOException {
        try (PDDocument pdf = written(page("Trial", table(List.of("W".repeat(10_000)))), Display.METRIC)) {
            float[] right = new float[1];
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(org.apache.pdfbox.text.TextPosition position) {
                    right[0] = Math.max(right[0], position.getXDirAdj() + position.getWidthDirAdj());
                }
            }.getText(pdf);
            assertTrue(right[0] > 100 && right[0] <= PDRectangle.A4.getWidth() - 13 * 72 / 25.4 + 1, "reaches to " + right[0]);
        }
    }

    @Test
    void nothingIsSaidOfLettersWhereNoneIsMissing() throws IOException {
        try (PDDocument pdf = written(page("Trial", table(numbered(1))), Display.METRIC)) {
            assertFalse(pages(pdf).get(0).contains("stands for a letter"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"M0 0C1 1 2 2 3 3", "M0 0a3 4 0 1 1 6 0", "M0", "M0 0z1 1", "Mx"})
    void pathThatOurCodeNeverWritesIsRefused(String data) {
        assertThrows(IllegalArgumentException.class, () -> SvgPath.of(data));
    }

    @Test
    void pathsOfMarks() {
        Path2D circle = SvgPath.of("M-4 0a4 4 0 1 1 8 0a4 4 0 1 1 -8 0z");
        assertEquals(-4, circle.getBounds2D().getMinX(), 1e-9);
        assertEquals(4, circle.getBounds2D().getMaxY(), 1e-9);
        assertTrue(circle.contains(0, -3.9) && circle.contains(2.8, 2.8) && !circle.contains(2.9, 2.9));
        assertEquals(circle.getBounds2D(), SvgPath.of("M-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z").getBounds2D());
        assertTrue(SvgPath.of("M1 1h2v2h-2z").contains(2.9, 2.9));
    }

    @Test
    void whatADrawingMayNotHoldIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> PdfReport.write(page("Trial",
                new Part("plot", "Plot", html -> html.ready("<svg width=\"9\" height=\"9\" viewBox=\"0 0 9 9\"><foreignObject/></svg>"))),
                Display.METRIC, folder.resolve("x.pdf")));
        assertThrows(IllegalArgumentException.class, () -> PdfReport.write(page("Trial",
                new Part("plot", "Plot", html -> html.ready("<svg width=\"9\" height=\"9\" viewBox=\"0 0 9 9\"><image href=\"file:///etc/passwd\"/></svg>"))),
                Display.METRIC, folder.resolve("x.pdf")));
    }
}
