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
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads GPX 1.1 and 1.0, which is always longitude and latitude on WGS 84. Waypoints and the points of routes
 * become points, each segment of a track a line. Attributes are {@code name, cmt, desc, sym, type} (of a
 * track's line the track's own) and {@code route}: the name of a point's route, else its number, else its
 * place among the routes. A feature's id is its place in the file, from 1, track segments counted as one.
 * Elements of other namespaces, times and elevations are passed over.
 *
 * <p>Not by the library that writes GPX here: its errors name no line.
 */
final class GpxReader implements VectorReader {
    private static final List<String> NAMESPACES = List.of("http://www.topografix.com/GPX/1/");
    private static final List<String> TEXTS = List.of("name", "cmt", "desc", "sym", "type");
    private static final String ROUTE = "route";
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    @Override
    public String format() {
        return "GPX";
    }

    @Override
    public List<String> extensions() {
        return List.of(".gpx");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        LayerCrs.requireWgs84(source, format());
        Path file = source.file();
        try (InputStream in = Files.newInputStream(file)) {
            return new Content(new XmlElements(file, format(), in, "gpx", NAMESPACES)).read(source);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** What has been read of one file so far. */
    private static final class Content {
        private final XmlElements xml;
        private final List<Feature> features = new ArrayList<>();
        private int number;
        private int routes;
        private int shortSegments;

        Content(XmlElements xml) {
            this.xml = xml;
        }

        VectorLayer read(LayerFile source) {
            String version = xml.attribute("version");
            if (version != null && !version.strip().startsWith("1")) {
                throw xml.problem("is GPX of version " + XmlElements.shown(version) + "; export it as GPX 1.1");
            }
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "wpt" -> {
                        Map<String, Object> attributes = noTexts();
                        add(GEOMETRIES.createPoint(position(attributes)), attributes);
                    }
                    case "rte" -> readRoute();
                    case "trk" -> readTrack();
                    default -> xml.skip();
                }
            }
            xml.end();
            return new VectorLayer(source.label(), source.file(), "GPX", Crs.WGS84, source.edges(), List.copyOf(features), shortSegments,
                    shortSegments == 0 ? List.of() : List.of(shortSegments + " track segments have fewer than two points and are no lines"));
        }

        private void readRoute() {
            routes++;
            String name = null;
            String ordinal = null;
            List<Coordinate> places = new ArrayList<>();
            List<Map<String, Object>> rows = new ArrayList<>();
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "name" -> name = xml.attributeText();
                    case "number" -> ordinal = xml.attributeText();
                    case "rtept" -> {
                        Map<String, Object> attributes = noTexts();
                        places.add(position(attributes));
                        rows.add(attributes);
                    }
                    default -> xml.skip();
                }
            }
            for (int i = 0; i < places.size(); i++) {
                rows.get(i).put(ROUTE, name != null ? name : ordinal != null ? ordinal : Integer.toString(routes));
                add(GEOMETRIES.createPoint(places.get(i)), rows.get(i));
            }
        }

        private void readTrack() {
            Map<String, Object> attributes = noTexts();
            List<Coordinate[]> segments = new ArrayList<>();
            while (xml.nextChild()) {
                switch (xml.name()) {
                    case "trkseg" -> segments.add(readSegment());
                    default -> readText(attributes);
                }
            }
            for (Coordinate[] segment : segments) {
                if (segment.length < 2) {
                    number++;
                    shortSegments++;
                } else {
                    add(GEOMETRIES.createLineString(segment), attributes);
                }
            }
        }

        private Coordinate[] readSegment() {
            List<Coordinate> places = new ArrayList<>();
            while (xml.nextChild()) {
                if (xml.name().equals("trkpt")) {
                    places.add(position(noTexts()));
                } else {
                    xml.skip();
                }
            }
            return places.toArray(Coordinate[]::new);
        }

        /** Reads a waypoint, or a point of a route or track, with its texts. */
        private Coordinate position(Map<String, Object> attributes) {
            Coordinate place;
            try {
                place = DegreeText.place(xml.attribute("lon"), xml.attribute("lat"), 180);
            } catch (InputException e) {
                throw xml.problem(xml.name() + ": " + e.getMessage());
            }
            while (xml.nextChild()) {
                readText(attributes);
            }
            return place;
        }

        private void readText(Map<String, Object> attributes) {
            if (TEXTS.contains(xml.name())) {
                attributes.put(xml.name(), xml.attributeText());
            } else {
                xml.skip();
            }
        }

        private static Map<String, Object> noTexts() {
            Map<String, Object> attributes = new LinkedHashMap<>();
            TEXTS.forEach(name -> attributes.put(name, null));
            attributes.put(ROUTE, null);
            return attributes;
        }

        private void add(Geometry geometry, Map<String, Object> attributes) {
            features.add(new Feature(++number, geometry, Collections.unmodifiableMap(attributes)));
        }
    }
}
