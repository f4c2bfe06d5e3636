package org.seacairn.layer;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads GeoJSON (RFC 7946): a FeatureCollection, a Feature or a bare geometry, as a stream. Coordinates
 * are longitude, latitude on WGS 84, or easting or longitude first in the CRS that a "crs" member of the
 * earlier specification of 2008 names. A feature's id is its place in the file, from 1; its member "id" becomes an
 * attribute unless its properties have one. Lists and objects in the properties become their JSON text.
 */
final class GeoJsonReader implements VectorReader {
    /** Deep enough for any real properties, and no risk to the stack. */
    private static final int DEEPEST_NESTING = 100;

    static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST_NESTING).build())
            .build();

    @Override
    public String format() {
        return "GeoJSON";
    }

    @Override
    public List<String> extensions() {
        return List.of(".geojson", ".json");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        Content content = new Content();
        try (InputStream in = Files.newInputStream(file); JsonParser parser = JSON.createParser(in)) {
            try {
                content.read(parser);
            } catch (InputException e) {
                throw VectorReader.problem(file, content.place(parser.currentLocation()), e.getMessage(), e);
            } catch (JsonProcessingException e) {
                JsonLocation location = e.getLocation() == null ? parser.currentLocation() : e.getLocation();
                throw VectorReader.problem(file, content.place(location),
                        "is no proper JSON (" + reason(e) + "); correct it or export it again", e);
            }
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
        List<String> notes = new ArrayList<>();
        if (content.crsName != null) {
            notes.add("its CRS is that of its \"crs\" member, " + content.crsName + ", with x before y");
        }
        if (content.innerCrs > 0) {
            notes.add(content.innerCrs + " \"crs\" members inside features are not read");
        }
        Crs crs = LayerCrs.choose(source, () -> crs(file, content.crsName), notes);
        return new VectorLayer(source.label(), file, format(), crs, source.edges(), List.copyOf(content.features), content.withoutGeometry,
                List.copyOf(notes));
    }

    private static String reason(JsonProcessingException e) {
        String firstLine = e.getOriginalMessage().lines().findFirst().orElse("no reason given");
        // The library names the methods that set its limits and its leniency, and objects of its own, which are of no use to the reader.
        return firstLine.replaceAll(", from `[^`]*`|: enable `[^`]*` to allow| \\(start marker at .*", "");
    }

    private static Crs crs(Path file, String name) {
        try {
            return name == null ? Crs.WGS84 : Crs.parse(name);
        } catch (InputException e) {
            throw VectorReader.problem(file, "member \"crs\"", e.getMessage(), e);
        }
    }

    /** What has been read of one file so far. */
    private static final class Content {
        private final List<Feature> features = new ArrayList<>();
        private int withoutGeometry;
        private int innerCrs;
        private int number;
        private boolean withinFeature;
        private String crsName;

        void read(JsonParser parser) throws IOException {
            parser.nextToken();
            GeoJsonNode top = GeoJsonNode.read(parser, this::readFeature);
            crsName = top.crsName;
            if (top.type == null) {
                throw new InputException("the outermost object has no \"type\"; a GeoJSON file starts with {\"type\": \"FeatureCollection\"");
            }
            switch (top.type) {
                case "FeatureCollection" -> { }
                case "Feature" -> add(1, top.geometry, attributes(top));
                case "Topology" -> throw new InputException("is TopoJSON and not GeoJSON; convert it to GeoJSON");
                default -> add(1, top, Map.of());
            }
            if (parser.nextToken() != null) {
                throw new InputException("text follows after the end of the first object; put all features into one FeatureCollection");
            }
        }

        private void readFeature(JsonParser parser) throws IOException {
            number++;
            withinFeature = true;
            GeoJsonNode node = GeoJsonNode.read(parser, null);
            if (!"Feature".equals(node.type)) {
                throw new InputException("has no \"type\": \"Feature\"; correct or delete it");
            }
            innerCrs += node.crsName != null || node.geometry != null && node.geometry.crsName != null ? 1 : 0;
            add(number, node.geometry, attributes(node));
            withinFeature = false;
        }

        private void add(int id, GeoJsonNode geometryNode, Map<String, Object> attributes) {
            Geometry geometry = geometryNode == null ? null : GeoJsonGeometry.of(geometryNode);
            if (geometry == null) {
                withoutGeometry++;
            } else {
                features.add(new Feature(id, geometry, attributes));
            }
        }

        private static Map<String, Object> attributes(GeoJsonNode node) {
            Map<String, Object> attributes = new LinkedHashMap<>(node.properties);
            if (node.id != null) {
                attributes.putIfAbsent("id", node.id);
            }
            return Collections.unmodifiableMap(attributes);
        }

        String place(JsonLocation location) {
            String line = "line " + location.getLineNr() + ", column " + location.getColumnNr();
            return withinFeature ? "feature " + number + " (" + line + ")" : line;
        }
    }
}
