package org.seacairn.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A layer of random features about a small grid: as GeoJSON, and as shapes for the oracle made from the
 * very digits of that GeoJSON. In longitude and latitude, in the grid's UTM zone or in the next one.
 */
final class RandomLayer {
    private final Random random;
    private final RandomGrid grid;
    /** Signed UTM zone of the layer's coordinates; 0 for longitude and latitude. */
    private final int zone;
    /** Added to longitudes: layers about the antimeridian come from either side of it. */
    private final double turnDeg;
    private final List<String> features = new ArrayList<>();
    private final List<PlainShape> shapes = new ArrayList<>();
    private final List<String> kinds = new ArrayList<>();

    RandomLayer(Random random, RandomGrid grid) {
        this.random = random;
        this.grid = grid;
        // The nearer of the two: beyond 6 degrees from its meridian the code's projection loses millimetres.
        boolean east = grid.centre()[0] > 6 * Math.abs(grid.zone()) - 183;
        int next = grid.zone() + (east == grid.zone() > 0 ? 1 : -1);
        this.zone = new int[] {0, 0, 0, 0, grid.zone(), next}[random.nextInt(6)];
        this.turnDeg = grid.zone() == -1 && random.nextBoolean() ? 360 : 0;
    }

    /** The shapes in order, one for each part of a feature. */
    List<PlainShape> shapes() {
        return shapes;
    }

    /** The attribute "kind" of each shape. */
    List<String> kinds() {
        return kinds;
    }

    String geoJson() {
        String crs = zone == 0 ? "" : String.format(Locale.ROOT,
                "\"crs\": {\"type\": \"name\", \"properties\": {\"name\": \"urn:ogc:def:crs:EPSG::%d\"}}, ",
                (zone < 0 ? 32700 : 32600) + Math.abs(zone));
        return "{\"type\": \"FeatureCollection\", " + crs + "\"features\": [" + String.join(",\n", features) + "]}\n";
    }

    /** Adds a feature of any type somewhere about the grid. */
    void addAny() {
        switch (random.nextInt(6)) {
            case 0 -> feature("any", "Point", point(somewhere()));
            case 1 -> feature("any", "LineString", line(walk()));
            case 2 -> addPolygon("any", 0.02 + 0.2 * random.nextDouble());
            case 3 -> {
                String first = point(somewhere());
                feature("any", "MultiPoint", "[" + first + ", " + point(somewhere()) + "]");
            }
            case 4 -> collection();
            default -> feature("any", "LineString", line(passing()));
        }
    }

    /** Adds points only, as a table of reefs has them. */
    void addPoint() {
        feature("any", "Point", point(somewhere()));
    }

    private void collection() {
        String first = point(somewhere());
        String second = line(walk());
        features.add("{\"type\": \"Feature\", \"properties\": {\"kind\": \"any\"}, \"geometry\": {\"type\": \"GeometryCollection\","
                + " \"geometries\": [{\"type\": \"Point\", \"coordinates\": " + first
                + "}, {\"type\": \"LineString\", \"coordinates\": " + second + "}]}}");
        name("any");
    }

    /** @param size radius as a share of the grid's longer side */
    void addPolygon(String kind, double size) {
        addPolygon(kind, size, somewhere());
    }

    /** Adds a polygon about the middle of the grid. */
    void addPolygonAcross(String kind, double size) {
        addPolygon(kind, size, new double[] {grid.west() + grid.widthM() / 2, grid.north() - grid.heightM() / 2});
    }

    private void addPolygon(String kind, double size, double[] at) {
        double radiusM = size * Math.max(grid.widthM(), grid.heightM());
        double[][] shell = star(at, radiusM, 1);
        List<double[][]> rings = new ArrayList<>(List.<double[][]>of(shell));
        if (random.nextInt(3) == 0) {
            rings.add(scaled(shell, at, 0.2 + 0.5 * random.nextDouble()));
        }
        if (random.nextInt(4) == 0) {
            String first = polygon(rings);
            // A second part that cannot touch the first: its stars reach no farther than their radius.
            double[] beside = {at[0] + 2.2 * radiusM, at[1]};
            feature(kind, "MultiPolygon", "[" + first + ", " + polygon(List.<double[][]>of(star(beside, radiusM, -1))) + "]");
        } else {
            feature(kind, "Polygon", polygon(rings));
        }
    }

    private double[] somewhere() {
        return new double[] {grid.west() + grid.widthM() * (2.2 * random.nextDouble() - 0.6),
            grid.north() - grid.heightM() * (2.2 * random.nextDouble() - 0.6)};
    }

    private List<double[]> walk() {
        List<double[]> walk = new ArrayList<>(List.of(somewhere()));
        int more = 1 + random.nextInt(5);
        for (int i = 0; i < more; i++) {
            walk.add(somewhere());
        }
        return walk;
    }

    /** An edge of many kilometres that passes by: its geodesic is metres away from straight lines on maps. */
    private List<double[]> passing() {
        double[] at = somewhere();
        double turn = 2 * Math.PI * random.nextDouble();
        double before = 1000 + 19_000 * random.nextDouble();
        double after = 1000 + 19_000 * random.nextDouble();
        return List.of(new double[] {at[0] - before * Math.cos(turn), at[1] - before * Math.sin(turn)},
                new double[] {at[0] + after * Math.cos(turn), at[1] + after * Math.sin(turn)});
    }

    private double[][] star(double[] at, double radiusM, int sense) {
        int corners = 4 + random.nextInt(6);
        double[] turns = random.doubles(corners).map(t -> 2 * Math.PI * t).sorted().toArray();
        for (int i = 0; i < corners; i++) {
            // One corner in each of equal sectors, so that the centre is inside and no two corners coincide.
            turns[i] = 2 * Math.PI * (i + 0.1 + 0.8 * turns[i] / (2 * Math.PI)) / corners;
        }
        double[][] ring = new double[corners + 1][];
        for (int i = 0; i < corners; i++) {
            double r = radiusM * (0.4 + 0.6 * random.nextDouble());
            ring[sense > 0 ? i : corners - 1 - i] = new double[] {at[0] + r * Math.cos(turns[i]), at[1] + r * Math.sin(turns[i])};
        }
        ring[corners] = ring[0];
        return ring;
    }

    private static double[][] scaled(double[][] ring, double[] about, double by) {
        return Arrays.stream(ring).map(p -> new double[] {about[0] + by * (p[0] - about[0]), about[1] + by * (p[1] - about[1])})
                .toArray(double[][]::new);
    }

    private String point(double[] xy) {
        double[][] lonLat = new double[1][];
        String text = position(xy, lonLat, 0);
        shapes.add(new PlainShape(false, List.<double[][]>of(lonLat), grid.centre()));
        return text;
    }

    private String line(List<double[]> line) {
        double[][] lonLat = new double[line.size()][];
        String text = positions(line.toArray(double[][]::new), lonLat);
        shapes.add(new PlainShape(false, List.<double[][]>of(lonLat), grid.centre()));
        return text;
    }

    private String polygon(List<double[][]> rings) {
        List<double[][]> parts = new ArrayList<>();
        List<String> texts = new ArrayList<>();
        for (double[][] ring : rings) {
            double[][] lonLat = new double[ring.length][];
            texts.add(positions(ring, lonLat));
            parts.add(lonLat);
        }
        shapes.add(new PlainShape(true, parts, grid.centre()));
        return "[" + String.join(", ", texts) + "]";
    }

    private String positions(double[][] xy, double[][] lonLat) {
        StringBuilder text = new StringBuilder("[");
        for (int i = 0; i < xy.length; i++) {
            text.append(i == 0 ? "" : ", ").append(position(xy[i], lonLat, i));
        }
        return text.append("]").toString();
    }

    private String position(double[] xy, double[][] lonLat, int i) {
        double[] exact = PlainMap.lonLat(grid.zone(), xy[0], xy[1]);
        double[] own = zone == 0 ? exact : PlainMap.utm(zone, exact[0], exact[1]);
        own = zone == 0 ? new double[] {own[0] + turnDeg, own[1]} : own;
        String format = zone == 0 ? "%.9f" : "%.4f";
        String x = String.format(Locale.ROOT, format, own[0]);
        String y = String.format(Locale.ROOT, format, own[1]);
        double[] read = {Double.parseDouble(x), Double.parseDouble(y)};
        lonLat[i] = zone == 0 ? read : PlainMap.lonLat(zone, read[0], read[1]);
        return "[" + x + ", " + y + "]";
    }

    private void feature(String kind, String type, String coordinates) {
        features.add("{\"type\": \"Feature\", \"properties\": {\"kind\": \"" + kind + "\"}, \"geometry\": {\"type\": \""
                + type + "\", \"coordinates\": " + coordinates + "}}");
        name(kind);
    }

    private void name(String kind) {
        while (kinds.size() < shapes.size()) {
            kinds.add(kind);
        }
    }
}
