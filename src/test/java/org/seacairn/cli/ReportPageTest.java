package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.cli.TinyScene.Outcome;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The page of every command, from plan to {@code report.html}. */
class ReportPageTest {
    private static final String HOSTILE = "<script>alert(1)</script>\\\"'><img src=x onerror=alert(2)> javascript:alert(3) \u202Eevil\u2069";

    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    /** What each command is asked; {@code OUT} is its folder. */
    private Outcome run(String command, String... more) {
        List<String> args = new ArrayList<>(List.of(command, scene.path("plan.yaml").toString(), "--out", scene.path("out").toString(), "--quiet"));
        switch (command) {
            case "review" -> {
                scene.write("proposal.csv", "site,longitude,latitude\nNear," + place(700, 230) + "\nFar," + place(3000, 300) + "\n");
                args.add(2, scene.path("proposal.csv").toString());
            }
            case "infill" -> {
                scene.write("reefs.csv", "name,longitude,latitude\nTeapot," + place(700, 200) + "\nKettle," + place(250, 250) + "\n");
                args.addAll(List.of("--from", "Teapot", "--to", "Kettle"));
            }
            case "ring" -> args.addAll(List.of("--around", "Teapot", "--radius", "100 m to 250 m", "--modules", "3"));
            case "areas" -> args.addAll(List.of("--size", "120 m x 100 m"));
            default -> { }
        }
        args.addAll(List.of(more));
        return TinyScene.run(args.toArray(String[]::new));
    }

    private static String place(double xM, double yM) {
        return TinyScene.lonLat(xM, yM).replace(" ", "");
    }

    private String page(String command, String... more) {
        Outcome outcome = run(command, more);
        assertTrue(outcome.status() <= 1, outcome.err());
        return scene.read("out/report.html");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "review", "infill", "ring", "areas"})
    void everyPageIsWellFormedAndInOrder(String command) {
        Document page = parsed(page(command));
        assertEquals(1, elements(page, "h1").size());
        Set<String> ids = new HashSet<>();
        int level = 1;
        for (Element element : elements(page, "*")) {
            String id = element.getAttribute("id");
            assertTrue(id.isEmpty() || ids.add(id), "twice: " + id);
            if (element.getTagName().matches("h[1-6]")) {
                int next = element.getTagName().charAt(1) - '0';
                assertTrue(next <= level + 1, element.getTextContent() + " skips a level");
                level = next;
            }
        }
        for (Element link : elements(page, "a")) {
            assertTrue(ids.contains(link.getAttribute("href").substring(1)), "leads nowhere: " + link.getAttribute("href"));
        }
        for (Element table : elements(page, "table")) {
            assertEquals(1, table.getElementsByTagName("caption").getLength());
            for (Element head : elements(table, "th")) {
                assertTrue(Set.of("col", "row").contains(head.getAttribute("scope")), head.getTextContent());
            }
        }
        for (Element row : elements(page, "tr")) {
            String feature = row.getAttribute("data-feature");
            assertTrue(feature.isEmpty() || feature.startsWith("gap-") || ids.contains(feature), "no block " + feature);
        }
        assertTrue(page.getDocumentElement().getTextContent().contains("not for navigation"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "review", "infill", "ring", "areas"})
    void theSameInputsGiveTheSameBytesWhateverTheThreads(String command) {
        assertEquals(page(command, "--threads", "1"), page(command, "--threads", "3"));
    }

    @Test
    void everyFigureOfTheSitesTableIsThatOfSitesCsv() {
        Document page = parsed(page("rank"));
        List<String> lines = scene.read("out/sites.csv").lines().toList();
        List<String> header = List.of(lines.get(0).split(","));
        Element table = (Element) elements(page, "section").stream().filter(s -> s.getAttribute("id").equals("sites")).findFirst().orElseThrow()
                .getElementsByTagName("tbody").item(0);
        List<Element> rows = elements(table, "tr");
        assertEquals(lines.size() - 1, rows.size());
        Map<Integer, String> columns = new TreeMap<>(Map.of(1, "rank", 2, "score", 3, "latitude_deg", 4, "longitude_deg", 5, "depth_m",
                7, "slope_deg", 9, "landing_radius_m", 11, "stone_distance_m"));
        for (int r = 0; r < rows.size(); r++) {
            List<String> csv = List.of(lines.get(r + 1).split(",", -1));
            NodeList cells = rows.get(r).getChildNodes();
            for (Map.Entry<Integer, String> column : columns.entrySet()) {
                Element cell = (Element) cells.item(column.getKey());
                assertEquals(csv.get(header.indexOf(column.getValue())), cell.getAttribute("data-sort"), column.getValue());
            }
            double depthM = Double.parseDouble(csv.get(header.indexOf("depth_m")));
            assertEquals(String.format(Locale.ROOT, "%.0f", depthM), cells.item(5).getTextContent());
            // 0.5 m uncertainty and 8 m of module, by the scene's plan; rounded down.
            assertEquals(Math.floor((depthM - 8.5) * 10 + 1e-6) / 10, Double.parseDouble(cells.item(6).getTextContent()), 1e-9);
            assertEquals(csv.get(header.indexOf("latitude_ddm")), cells.item(3).getTextContent());
            assertEquals(csv.get(header.indexOf("longitude_ddm")), cells.item(4).getTextContent());
            assertEquals(String.format(Locale.ROOT, "%.3f", Double.parseDouble(csv.get(header.indexOf("score")))), cells.item(2).getTextContent());
        }
    }

    @Test
    void displayUnitsStandInTheHeads() {
        scene.plan("title:", "display: us\ntitle:");
        Document page = parsed(page("rank"));
        List<String> lines = scene.read("out/sites.csv").lines().toList();
        int column = List.of(lines.get(0).split(",")).indexOf("depth_m");
        Element sites = elements(page, "section").stream().filter(s -> s.getAttribute("id").equals("sites")).findFirst().orElseThrow();
        assertEquals("Depth (ft)", elements(sites, "th").get(5).getTextContent());
        assertEquals(String.format(Locale.ROOT, "%.0f", Double.parseDouble(lines.get(1).split(",")[column]) / 0.3048),
                ((Element) sites.getElementsByTagName("tbody").item(0)).getFirstChild().getNextSibling().getChildNodes().item(5).getTextContent());
    }

    @Test
    void theBarsOfASiteAddUpToItsScore() {
        Document page = parsed(page("rank"));
        for (Element block : elements(page, "article")) {
            double score = Double.parseDouble(block.getElementsByTagName("h3").item(0).getTextContent().replaceFirst(".*score ", ""));
            double sum = 0;
            for (Element row : elements((Element) block.getElementsByTagName("tbody").item(0), "tr")) {
                sum += Double.parseDouble(row.getLastChild().getTextContent());
            }
            // Five figures and the score, each rounded to a thousandth.
            assertEquals(score, sum, 0.003);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "review", "infill", "ring", "areas"})
    void hostileNamesStayText(String command) {
        scene.plan("title: Trial off Teasel Bank", "title: \"" + HOSTILE + "\"");
        scene.plan("layer: Old Cables", "layer: \"" + HOSTILE + "\"");
        scene.plan("invented rule 2", HOSTILE);
        scene.write("cables.geojson", TinyScene.features(TinyScene.feature("name", HOSTILE + "x".repeat(10_000), "LineString",
                TinyScene.line(-200, 700, 1400, 600))));
        String html = page(command);
        Document page = parsed(html);
        assertEquals(1, elements(page, "script").size());
        assertEquals(0, elements(page, "img").size());
        assertFalse(html.contains("\u202E") || html.contains("\u2069"));
        assertFalse(html.contains("x".repeat(700)));
        assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
        for (Element element : elements(page, "*")) {
            for (int i = 0; i < element.getAttributes().getLength(); i++) {
                String name = element.getAttributes().item(i).getNodeName();
                assertFalse(name.startsWith("on"), name);
                String start = element.getTagName().equals("image") ? "data:image/png;base64," : "#";
                assertTrue(!name.equals("href") || element.getAttribute(name).startsWith(start), element.getAttribute(name));
            }
        }
    }

    @Test
    void hostileNamesOfProposedSitesStayText() {
        scene.write("p.csv", "site,longitude,latitude\n\"" + HOSTILE.replace("\\\"", "\"\"") + "\"," + place(700, 230) + "\n");
        Outcome outcome = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("p.csv").toString(), "--out",
                scene.path("out").toString(), "--quiet");
        assertTrue(outcome.status() <= 1, outcome.err());
        Document page = parsed(scene.read("out/report.html"));
        assertEquals(1, elements(page, "script").size());
        assertEquals(0, elements(page, "img").size());
    }

    /** Content Security Policy level 3, 8.1: the hash of what stands between the tags. */
    @Test
    void nothingFromOutsideIsLetIn() throws NoSuchAlgorithmException {
        String html = page("rank");
        Matcher script = Pattern.compile("<script>(.*?)</script>", Pattern.DOTALL).matcher(html);
        assertTrue(script.find());
        String hash = Base64.getEncoder().encodeToString(
                MessageDigest.getInstance("SHA-256").digest(script.group(1).getBytes(StandardCharsets.UTF_8)));
        Matcher policy = Pattern.compile("http-equiv=\"Content-Security-Policy\" content=\"(.*?)\"").matcher(html);
        assertTrue(policy.find());
        assertEquals("default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; script-src 'sha256-"
                + hash + "'", policy.group(1));
        assertFalse(html.contains("url(") || html.contains("@import"));
        assertFalse(html.contains(folder.toString()));
    }

    @Test
    void aLongReviewIsBoundedAndSaysWhereTheRestIs() {
        StringBuilder proposal = new StringBuilder("site,longitude,latitude\n");
        for (int i = 0; i < 1500; i++) {
            proposal.append("P").append(i).append(',').append(place(100 + i % 50 * 20, 100 + i / 50 * 15)).append('\n');
        }
        scene.write("many.csv", proposal.toString());
        Outcome outcome = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("many.csv").toString(), "--out",
                scene.path("out").toString(), "--quiet");
        assertEquals(1, outcome.status(), outcome.err());
        String html = scene.read("out/report.html");
        assertTrue(html.length() < 2_000_000, html.length() + " characters");
        assertTrue(html.contains("1100 more sites are not shown here; all 1500 are in review.csv."));
        assertTrue(html.contains("1400 more sites are not shown here; all 1500 are in review.csv."));
        assertTrue(html.contains("The 1000 worst of 1500 proposed sites are drawn."));
    }

    /** The first hundred sites have a block each, to which their marks lead; the marks of the others lead to their rows. */
    @Test
    void everyMarkOfManySitesLeadsSomewhere() {
        scene.plan("count: 4, apart: 150 m", "count: 130, apart: 45 m");
        Document page = parsed(page("rank"));
        Set<String> ids = new HashSet<>();
        elements(page, "*").forEach(element -> assertTrue(element.getAttribute("id").isEmpty() || ids.add(element.getAttribute("id"))));
        assertTrue(ids.contains("site-S101") && ids.contains("site-S001"), "too few sites");
        elements(page, "a").forEach(link -> assertTrue(ids.contains(link.getAttribute("href").substring(1)), link.getAttribute("href")));
    }

    @Test
    void aRankingWithoutSitesSaysSo() {
        scene.plan("depth: [60 m, 120 m]", "depth: [140 m, 150 m]");
        String html = page("rank");
        parsed(html);
        assertTrue(html.contains("No place is feasible"));
    }

    /** What stands in style and script is no XML; all the rest must be. */
    private static Document parsed(String html) {
        String xml = html.replaceFirst("<!DOCTYPE html>", "").replaceAll("(?s)<(script|style)>.*?</\\1>", "<$1></$1>");
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        } catch (SAXException | IOException | ParserConfigurationException e) {
            throw new AssertionError(e);
        }
    }

    private static List<Element> elements(Document page, String tag) {
        return list(page.getElementsByTagName(tag));
    }

    private static List<Element> elements(Element within, String tag) {
        return list(within.getElementsByTagName(tag));
    }

    private static List<Element> list(NodeList nodes) {
        List<Element> list = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            list.add((Element) nodes.item(i));
        }
        return list;
    }
}
