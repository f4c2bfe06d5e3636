package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads KML 2.0 to 2.3 (OGC 12-007r2), with or without its namespace, and KMZ. It is always longitude and
 * latitude on WGS 84. Every Placemark, in whatever folder, is one feature; its attributes are {@code name} and
 * {@code description}, then its ExtendedData, all text. A feature's id is the Placemark's place in the file, from 1.
 * Tracks, models, pictures and links to other files are not read, and a note says so.
 */
final class KmlReader implements VectorReader {
    private static final List<String> NAMESPACES = List.of("http://www.opengis.net/kml/", "http://earth.google.com/kml/");

    @Override
    public String format() {
        return "KML";
    }

    @Override
    public List<String> extensions() {
        return List.of(".kml", ".kmz");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        LayerCrs.requireWgs84(source, format());
        Path file = source.file();
        try (InputStream in = Kmz.isArchive(file) ? Kmz.openDocument(file) : Files.newInputStream(file)) {
            return new Content(new XmlElements(file, format(), in, "kml", NAMESPACES)).read(source);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** What has been read of one file so far. */
    private static final class Content {
        private final XmlElements xml;
        private final List<Feature> features = new ArrayList<>();
        /** How often what is not read occurs. */
        private final Map<String, Integer> skipped = new TreeMap<>();
        private int number;
        private int withoutGeometry;

        Content(XmlElements xml) {
            this.xml = xml;
        }

        VectorLayer read(LayerFile source) {
            readContainer();
            xml.end();
            List<String> notes = new ArrayList<>();
            skipped.forEach((name, count) -> notes.add("elements that are not read: " + count + " of " + name));
            return new VectorLayer(source.label(), source.file(), "KML", Crs.WGS84, source.edges(), List.copyOf(features), withoutGeometry,
                    List.copyOf(notes));
        }

        /** Reads what stands in the outermost element, a Document or a Folder; the depth of the XML is bounded. */
        private void readContainer() {
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "Document", "Folder" -> readContainer();
                    case "Placemark" -> readPlacemark();
                    case "NetworkLink", "GroundOverlay", "PhotoOverlay", "ScreenOverlay" -> skip();
                    default -> xml.skip();
                }
            }
        }

        private void readPlacemark() {
            number++;
            Map<String, Object> attributes = new LinkedHashMap<>();
            attributes.put("name", null);
            attributes.put("description", null);
            Map<String, Object> data = new LinkedHashMap<>();
            List<Geometry> geometries = new ArrayList<>();
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "name", "description" -> attributes.put(xml.name(), xml.attributeText());
                    case "ExtendedData" -> readData(data);
                    case "Model" -> skip();
                    default -> {
                        if (KmlGeometry.ELEMENTS.contains(xml.name())) {
                            KmlGeometry.read(xml, geometries, skipped);
                        } else if (xml.name().endsWith("Track")) {
                            // Of Google's extension, by whatever prefix.
                            skip();
                        } else {
                            xml.skip();
                        }
                    }
                }
            }
            // What the Placemark itself says goes before data of the same name.
            data.forEach(attributes::putIfAbsent);
            Geometry geometry = KmlGeometry.together(geometries);
            if (geometry == null) {
                withoutGeometry++;
            } else {
                features.add(new Feature(number, geometry, Collections.unmodifiableMap(attributes)));
            }
        }

        /** {@code <Data name=""><value>}, and {@code <SimpleData name="">} in a SchemaData. */
        private void readData(Map<String, Object> data) {
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "SchemaData" -> readData(data);
                    case "SimpleData" -> data.put(dataName(), xml.attributeText());
                    case "Data" -> {
                        String name = dataName();
                        data.put(name, null);
                        while (xml.nextChild()) {
                            if (xml.name().equals("value")) {
                                data.put(name, xml.attributeText());
                            } else {
                                xml.skip();
                            }
                        }
                    }
                    default -> xml.skip();
                }
            }
        }

        private String dataName() {
            String name = xml.attribute("name");
            // An empty name is a name: other formats have columns without one.
            if (name == null) {
                throw xml.problem(xml.name() + " has no name; write " + xml.name() + " name=\"…\", or delete it");
            }
            return name.strip();
        }

        private void skip() {
            skipped.merge(xml.name(), 1, Integer::sum);
            xml.skip();
        }
    }
}
