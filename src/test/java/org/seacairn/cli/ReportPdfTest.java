package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --pdf}, from plan to {@code report.pdf}. */
class ReportPdfTest {
    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    private byte[] pdf(String command, String out, String... more) throws IOException {
        List<String> args = new ArrayList<>(List.of(command, scene.path("plan.yaml").toString()));
        args.addAll(List.of(more));
        args.addAll(List.of("--out", scene.path(out).toString(), "--quiet", "--pdf"));
        TinyScene.Outcome outcome = TinyScene.run(args.toArray(String[]::new));
        assertTrue(outcome.status() <= 1, outcome.err());
        assertEquals("", outcome.err());
        return Files.readAllBytes(scene.path(out).resolve("report.pdf"));
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static String place(double xM, double yM) {
        return TinyScene.lonLat(xM, yM).replace(" ", "");
    }

    @Test
    void rankingHasEverySiteItsMapAndTheSameBytesTwice() throws IOException {
        byte[] first = pdf("rank", "a");
        String text = text(first);
        for (int rank = 1; rank <= 4; rank++) {
            assertTrue(text.contains("S0" + rank + " score "), text);
        }
        assertTrue(text.contains("Depth contours every") && text.contains("nmi") && text.contains("80°47"), text);
        assertFalse(text.contains("by this reason"), text);
        assertArrayEquals(first, pdf("rank", "b", "--threads", "1"));
    }

    @Test
    void everyOtherCommandWritesOne() throws IOException {
        scene.write("proposal.csv", "site,longitude,latitude\nNear," + place(700, 230) + "\nFar," + place(3000, 300) + "\n");
        assertTrue(text(pdf("review", "r", scene.path("proposal.csv").toString())).contains("Near"));
        scene.write("reefs.csv", "name,longitude,latitude\nTeapot," + place(700, 200) + "\nKettle," + place(250, 250) + "\n");
        assertTrue(text(pdf("infill", "i", "--from", "Teapot", "--to", "Kettle")).contains("Kettle"));
        assertTrue(text(pdf("ring", "g", "--around", "Teapot", "--radius", "100 m to 250 m", "--modules", "3")).contains("Teapot"));
        assertTrue(text(pdf("areas", "s", "--size", "120 m x 100 m")).contains("Trial off Teasel Bank"));
    }

    @Test
    void noPdfUnlessAsked() {
        TinyScene.run("rank", scene.path("plan.yaml").toString(), "--out", scene.path("out").toString(), "--quiet");
        assertTrue(Files.exists(scene.path("out").resolve("report.html")));
        assertFalse(Files.exists(scene.path("out").resolve("report.pdf")));
    }
}
