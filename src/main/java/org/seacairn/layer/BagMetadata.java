package org.seacairn.layer;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The XML metadata of a BAG: ISO 19139 since version 1.5 (BAG Format Specification Document 2.0, table 7), the
 * profile that came before it in older files. Elements are found by their local names, which both share.
 *
 * @param cellWidth the spacing of nodes from west to east, in CRS units
 * @param cellHeight the spacing of nodes from south to north, in CRS units
 * @param corners corner nodes, x and y in turn; the least of each is the south-western node
 * @param uncertaintyKind as the file says it, or empty text
 * @param verticalDatum as the file names it, or empty text
 */
record BagMetadata(Path file, double cellWidth, double cellHeight, List<Double> corners, String uncertaintyKind,
        String verticalDatum, Element root) {
    private static final String PLACE = "metadata";
    private static final Pattern NUMBER = Pattern.compile("[-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?");
    private static final Pattern VERTICAL_NAME = Pattern.compile("VERT[A-Z_]*\\[\\s*\"([^\"]*)\"");

    /** @throws InputException if the text is no XML, or tells no spacing or corner */
    static BagMetadata parse(Path file, String xml) {
        Element root = document(file, xml).getDocumentElement();
        double[] spacing = spacing(file, root);
        return new BagMetadata(file, spacing[0], spacing[1], corners(file, root), uncertaintyKind(root), verticalDatum(root), root);
    }

    private static Document document(Path file, String xml) {
        try {
            // The JDK's own, whatever other parsers are on the class path; no entity is expanded or fetched.
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setExpandEntityReferences(false);
            factory.setAttribute("jdk.xml.maxElementDepth", "100");
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            return builder.parse(new InputSource(new StringReader(xml)));
        } catch (SAXException | IOException | ParserConfigurationException e) {
            throw VectorReader.problem(file, PLACE, "is no proper XML (" + String.valueOf(e.getMessage()).replaceAll("\\s+", " ")
                    + "); get the file again", e);
        }
    }

    /** Width and height of a cell. */
    private static double[] spacing(Path file, Element root) {
        double[] found = {Double.NaN, Double.NaN};
        List<Element> axes = all(root, "MD_Dimension");
        for (int i = 0; i < axes.size(); i++) {
            String name = first(axes.get(i), "dimensionName").map(Node::getTextContent).orElse("").strip();
            double size = first(axes.get(i), "resolution").flatMap(BagMetadata::number).orElse(Double.NaN);
            // Rows come first where they are not named.
            int axis = name.equals("column") || !name.equals("row") && i == 1 ? 0 : 1;
            found[axis] = Double.isNaN(found[axis]) ? size : found[axis];
        }
        if (!(found[0] > 0 && found[1] > 0 && found[0] < 1e6 && found[1] < 1e6)) {
            throw VectorReader.problem(file, PLACE, "states the resolution " + found[0] + " x " + found[1]
                    + "; a BAG states that of its columns and rows, get the file again");
        }
        return found;
    }

    private static List<Double> corners(Path file, Element root) {
        List<Double> numbers = first(root, "cornerPoints").map(e -> numbers(e.getTextContent())).orElse(List.of());
        if (numbers.isEmpty()) {
            numbers = new ArrayList<>();
            for (String name : new String[] {"llCornerX", "llCornerY"}) {
                first(root, name).flatMap(BagMetadata::number).ifPresent(numbers::add);
            }
        }
        if (numbers.size() < 2 || numbers.size() % 2 != 0 || numbers.stream().anyMatch(n -> !(Math.abs(n) < 1e9))) {
            throw VectorReader.problem(file, PLACE, "states the corner points " + numbers
                    + "; a BAG states x and y of the south-western and north-eastern node, get the file again");
        }
        return List.copyOf(numbers);
    }

    double westNode() {
        return extreme(0, -1);
    }

    double southNode() {
        return extreme(1, -1);
    }

    double eastNode() {
        return extreme(0, 1);
    }

    double northNode() {
        return extreme(1, 1);
    }

    /** The greatest ordinate of an axis, or the least with a sign of -1: some writers begin with the other corner. */
    private double extreme(int axis, int sign) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = axis; i < corners.size(); i += 2) {
            most = Math.max(most, sign * corners.get(i));
        }
        return sign * most;
    }

    /** @throws InputException if the metadata names no horizontal CRS that can be read */
    Crs crs() {
        InputException unread = null;
        for (Element system : all(root, "referenceSystemInfo")) {
            try {
                Optional<Crs> found = first(system, "MD_CRS").isPresent() ? older(system) : stated(system);
                if (found.isPresent()) {
                    return found.get();
                }
            } catch (InputException e) {
                unread = VectorReader.problem(file, PLACE, e.getMessage(), e);
            }
        }
        throw unread != null ? unread : Bathymetries.withoutCrs(file);
    }

    private static Optional<Crs> stated(Element system) {
        String code = first(system, "code").map(Node::getTextContent).orElse("").strip();
        String space = first(system, "codeSpace").map(Node::getTextContent).orElse("").strip();
        if (code.isEmpty() || WktText.isVertical(code)) {
            return Optional.empty();
        }
        if (code.indexOf('[') >= 0) {
            return Optional.of(WktText.horizontal(code));
        }
        return Optional.of(Crs.parse(space.equalsIgnoreCase("EPSG") && code.matches("[0-9]+") ? "EPSG:" + code : code));
    }

    /** By names of projection, zone and datum, as files before version 1.5 have it. */
    private static Optional<Crs> older(Element system) {
        String projection = name(system, "projection");
        String datum = name(system, "datum").replaceAll("[^A-Za-z0-9]", "").toUpperCase(java.util.Locale.ROOT);
        int zone = first(system, "zone").flatMap(BagMetadata::number).map(Double::intValue).orElse(0);
        boolean south = zone < 0 || first(system, "falseNorthing").flatMap(BagMetadata::number).orElse(0.0) > 0;
        int number = Math.abs(zone);
        boolean wgs84 = datum.equals("WGS84");
        boolean nad83 = datum.equals("NAD83");
        if (projection.equals("UTM") && number >= 1 && number <= 60 && (wgs84 || nad83 && !south && number <= 23)) {
            return Optional.of(Crs.ofEpsg((wgs84 ? south ? 32700 : 32600 : 26900) + number));
        }
        if (projection.equals("Geodetic") && (wgs84 || nad83)) {
            return Optional.of(Crs.ofEpsg(wgs84 ? 4326 : 4269));
        }
        throw new InputException("states the projection \"" + XmlElements.shown(projection) + "\", zone " + zone + ", datum \""
                + XmlElements.shown(datum) + "\", which are not known together; state crs in the plan, for example EPSG:32617");
    }

    private static String name(Element system, String of) {
        return first(system, of).flatMap(e -> first(e, "code")).map(Node::getTextContent).orElse("").strip();
    }

    private static String uncertaintyKind(Element root) {
        return first(root, "verticalUncertaintyType").map(Node::getTextContent).orElse("").strip();
    }

    private static String verticalDatum(Element root) {
        for (Element system : all(root, "referenceSystemInfo")) {
            String older = name(system, "verticalDatum");
            Matcher wkt = VERTICAL_NAME.matcher(system.getTextContent());
            if (!older.isEmpty() || wkt.find()) {
                return older.isEmpty() ? wkt.group(1) : older;
            }
        }
        return "";
    }

    private static List<Element> all(Element in, String name) {
        NodeList found = in.getElementsByTagNameNS("*", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static Optional<Element> first(Element in, String name) {
        return Optional.ofNullable((Element) in.getElementsByTagNameNS("*", name).item(0));
    }

    private static Optional<Double> number(Element in) {
        return numbers(in.getTextContent()).stream().findFirst();
    }

    private static List<Double> numbers(String text) {
        return NUMBER.matcher(text).results().map(m -> Double.valueOf(m.group())).toList();
    }
}
