package org.seacairn.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A layer of random features about a scene, as GeoJSON, and as figures for the oracle made from the very digits of that
 * GeoJSON. Places are metres east and north of the scene's centre.
 */
final class ReviewLayer {
    /** Half of 50 nmi. */
    private static final double LONG_HALF_M = 46_300;

    private final Random random;
    private final PlainPlane plane;
    private final double halfM;
    private final boolean rhumb;
    /** The longitudes of a layer about the antimeridian run on beyond 180 degrees on either side, about this one. */
    private final double aboutLon;
    private final List<String> features = new ArrayList<>();
    private final List<PlainFigure> figures = new ArrayList<>();
    private final List<String> kinds = new ArrayList<>();
    private PlainFigure figure;

    /** @param halfM half of the scene's longer side */
    ReviewLayer(Random random, PlainPlane plane, double halfM, boolean rhumb) {
        this.random = random;
        this.plane = plane;
        this.halfM = halfM;
        this.rhumb = rhumb;
        double lon = plane.centre()[0];
        this.aboutLon = Math.abs(lon) > 178 && random.nextBoolean() ? lon - Math.copySign(360, lon) : lon;
    }

    List<PlainFigure> figures() {
        return figures;
    }

    /** The attribute "kind" of each figure. */
    List<String> kinds() {
        return kinds;
    }

    String geoJson() {
        return "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "]}\n";
    }

    /** Begins a feature; some have no name and go by their number. */
    private String begin(String kind) {
        String name = random.nextInt(5) == 0 ? null : kind + " " + (figures.size() + 1);
        return begin(kind, name);
    }

    private String begin(String kind, String name) {
        figure = new PlainFigure(name == null ? "#" + (figures.size() + 1) : name, plane, rhumb);
        figures.add(figure);
        kinds.add(kind);
        return "{\"type\": \"Feature\", \"properties\": {\"kind\": \"" + kind + "\""
                + (name == null ? "" : ", \"name\": \"" + name + "\"") + "}, \"geometry\": ";
    }

    private void end(String feature, String type, String coordinates) {
        features.add(feature + geometry(type, coordinates) + "}");
    }

    private static String geometry(String type, String coordinates) {
        return "{\"type\": \"" + type + "\", \"coordinates\": " + coordinates + "}";
    }

    void addAny() {
        String kind = "thing";
        switch (random.nextInt(10)) {
            case 0, 1 -> addPoint(kind, somewhere());
            case 2 -> addLine(kind, walk());
            case 3, 4 -> addPolygon(kind, 0.03 + 0.3 * random.nextDouble());
            case 5 -> {
                String feature = begin(kind);
                String first = point(somewhere());
                end(feature, "MultiPoint", "[" + first + ", " + point(somewhere()) + "]");
            }
            case 6 -> {
                String feature = begin(kind);
                String first = line(walk());
                end(feature, "MultiLineString", "[" + first + ", " + line(walk()) + "]");
            }
            case 7 -> addLine(kind, passing(LONG_HALF_M));
            case 8 -> addLane(kind);
            default -> {
                String feature = begin(kind);
                String first = geometry("Point", point(somewhere()));
                String second = geometry("LineString", line(walk()));
                features.add(feature + "{\"type\": \"GeometryCollection\", \"geometries\": [" + first + ", " + second + "]}}");
            }
        }
    }

    /** 10 to 80 km away. */
    void addFar() {
        double turn = 2 * Math.PI * random.nextDouble();
        double awayM = 1e4 * Math.pow(8, random.nextDouble());
        double[] at = {awayM * Math.cos(turn), awayM * Math.sin(turn)};
        if (random.nextBoolean()) {
            addPoint("far", at);
        } else {
            addPolygon("far", at, 2000);
        }
    }

    void addPoint(String kind, double[] xy) {
        String feature = begin(kind);
        end(feature, "Point", point(xy));
    }

    private void addLine(String kind, List<double[]> xy) {
        String feature = begin(kind);
        end(feature, "LineString", line(xy));
    }

    /** A strip with edges of up to 50 nmi. */
    private void addLane(String kind) {
        double[][] middle = passing(LONG_HALF_M).toArray(double[][]::new);
        double lengthM = PlainPlane.lengthM(middle[0], middle[1]);
        double wide = 20 + halfM * 0.3 * random.nextDouble();
        double ex = -(middle[1][1] - middle[0][1]) / lengthM * wide;
        double ey = (middle[1][0] - middle[0][0]) / lengthM * wide;
        String feature = begin(kind);
        end(feature, "Polygon", "[" + ring(new double[][] {middle[0], middle[1], {middle[1][0] + ex, middle[1][1] + ey},
            {middle[0][0] + ex, middle[0][1] + ey}, middle[0]}) + "]");
    }

    /** @param size radius as a share of half the scene's side */
    void addPolygon(String kind, double size) {
        addPolygon(kind, somewhere(), size * halfM);
    }

    /** Adds a polygon about the middle of the scene. */
    void addPolygonAcross(String kind, double size) {
        addPolygon(kind, new double[] {halfM * 0.2 * (random.nextDouble() - 0.5), halfM * 0.2 * (random.nextDouble() - 0.5)}, size * halfM);
    }

    void addPolygon(String kind, double[] at, double radiusM) {
        addPolygon(kind, kind + " " + (figures.size() + 1), at, radiusM, true);
    }

    void addPolygon(String kind, String name, double[] at, double radiusM, boolean multi) {
        String feature = begin(kind, name);
        double[][] shell = star(at, radiusM);
        String first = "[" + ring(shell) + (random.nextInt(3) == 0 ? ", " + ring(scaled(shell, at, 0.2 + 0.5 * random.nextDouble())) : "") + "]";
        if (multi && random.nextInt(4) == 0) {
            // A second part that cannot touch the first: neither reaches farther than its radius.
            end(feature, "MultiPolygon", "[" + first + ", [" + ring(star(new double[] {at[0] + 2.2 * radiusM, at[1]}, radiusM)) + "]]");
        } else {
            end(feature, "Polygon", first);
        }
    }

    /** Two areas with a border in common, from the same digits. */
    void addNeighbours(String kind) {
        double[] a = {halfM * 0.3 * (random.nextDouble() - 0.5), -halfM * (0.5 + 0.6 * random.nextDouble())};
        double[] b = {halfM * 0.3 * (random.nextDouble() - 0.5), halfM * (0.5 + 0.6 * random.nextDouble())};
        double[] west = {-halfM * (0.6 + 0.5 * random.nextDouble()), 0.3 * halfM * (random.nextDouble() - 0.5)};
        double[] east = {halfM * (0.6 + 0.5 * random.nextDouble()), 0.3 * halfM * (random.nextDouble() - 0.5)};
        String feature = begin(kind);
        end(feature, "Polygon", "[" + ring(new double[][] {a, b, west, a}) + "]");
        feature = begin(kind);
        end(feature, "Polygon", "[" + ring(new double[][] {b, a, east, b}) + "]");
    }

    double[] somewhere() {
        return new double[] {halfM * (2.4 * random.nextDouble() - 1.2), halfM * (2.4 * random.nextDouble() - 1.2)};
    }

    private List<double[]> walk() {
        List<double[]> walk = new ArrayList<>(List.of(somewhere()));
        int more = 1 + random.nextInt(5);
        for (int i = 0; i < more; i++) {
            walk.add(somewhere());
        }
        return walk;
    }

    private List<double[]> passing(double mostM) {
        double[] at = somewhere();
        double turn = 2 * Math.PI * random.nextDouble();
        double before = mostM * (0.1 + 0.9 * random.nextDouble());
        double after = mostM * (0.1 + 0.9 * random.nextDouble());
        return List.of(new double[] {at[0] - before * Math.cos(turn), at[1] - before * Math.sin(turn)},
                new double[] {at[0] + after * Math.cos(turn), at[1] + after * Math.sin(turn)});
    }

    private double[][] star(double[] at, double radiusM) {
        int corners = 4 + random.nextInt(6);
        double[][] ring = new double[corners + 1][];
        for (int i = 0; i < corners; i++) {
            // One corner in each of equal sectors, so that the centre is inside and no two corners coincide.
            double turn = 2 * Math.PI * (i + 0.1 + 0.8 * random.nextDouble()) / corners;
            double r = radiusM * (0.4 + 0.6 * random.nextDouble());
            ring[i] = new double[] {at[0] + r * Math.cos(turn), at[1] + r * Math.sin(turn)};
        }
        ring[corners] = ring[0];
        return ring;
    }

    private static double[][] scaled(double[][] ring, double[] about, double by) {
        return Arrays.stream(ring).map(p -> new double[] {about[0] + by * (p[0] - about[0]), about[1] + by * (p[1] - about[1])})
                .toArray(double[][]::new);
    }

    private String point(double[] xy) {
        double[][] read = new double[1][];
        String text = position(xy, read, 0);
        figure.point(read[0]);
        return text;
    }

    private String line(List<double[]> xy) {
        double[][] read = new double[xy.size()][];
        String text = positions(xy.toArray(double[][]::new), read);
        figure.line(read);
        return text;
    }

    private String ring(double[][] xy) {
        double[][] read = new double[xy.length][];
        String text = positions(xy, read);
        figure.ring(read);
        return text;
    }

    private String positions(double[][] xy, double[][] read) {
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < xy.length; i++) {
            texts.add(position(xy[i], read, i));
        }
        return texts.toString();
    }

    private String position(double[] xy, double[][] read, int i) {
        double[] at = plane.lonLat(xy);
        String lon = String.format(Locale.ROOT, "%.9f", aboutLon + Math.IEEEremainder(at[0] - aboutLon, 360));
        String lat = String.format(Locale.ROOT, "%.9f", at[1]);
        read[i] = new double[] {Double.parseDouble(lon), Double.parseDouble(lat)};
        return "[" + lon + ", " + lat + "]";
    }
}
