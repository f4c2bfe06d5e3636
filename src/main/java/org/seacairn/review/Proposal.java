package org.seacairn.review;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPoint;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;

/**
 * What somebody proposes: points or polygons out of any file that holds a layer.
 *
 * @param sites in the file's order, at least one
 * @param notes how the file was read, one line each
 */
public record Proposal(Path file, List<ProposedSite> sites, List<String> notes) {
    /** Attributes that hold a name, the likeliest first. */
    private static final List<String> NAMES = List.of("site", "name", "label", "id", "module", "area");
    private static final int TOLD = 20;

    /**
     * Reads a proposal.
     *
     * @param nameAttribute attribute with the sites' names, or empty: found by its usual names, else sites
     *     are numbered
     * @throws InputException if the file cannot be read or holds no site, something in it is neither a point
     *     nor a polygon, or a site off the grid would lie on it with its coordinates swapped or its
     *     longitude's sign turned
     */
    public static Proposal read(LayerFile source, Optional<String> nameAttribute, GridGeometry grid) {
        VectorLayer layer = VectorLayers.read(source);
        GeometryCheck.requireValid(layer);
        requireKinds(layer);
        Optional<String> name = nameAttribute.map(wanted -> stated(layer, wanted)).or(() -> usual(layer));
        List<ProposedSite> sites = new ArrayList<>();
        CoordinateTransform toLonLat = layer.crs().to(grid.crs().geographic());
        for (Feature feature : layer.features()) {
            try {
                take(feature.name(name), toLonLat.apply(feature.geometry()), sites);
            } catch (InputException e) {
                throw new InputException(layer.file().getFileName() + ", feature " + feature.id() + ": " + e.getMessage(), e);
            }
        }
        new MistakenPlaces(layer, new WorkingMap(grid)).refuse(feature -> feature.name(name));
        return new Proposal(source.file(), List.copyOf(sites), layer.notes());
    }

    private static void take(String name, Geometry lonLat, List<ProposedSite> sites) {
        if (lonLat instanceof MultiPoint points && points.getNumGeometries() > 1) {
            for (int i = 0; i < points.getNumGeometries(); i++) {
                sites.add(new ProposedSite(name + " (" + (i + 1) + ")", points.getGeometryN(i)));
            }
        } else {
            sites.add(new ProposedSite(name, lonLat instanceof MultiPoint one ? one.getGeometryN(0) : lonLat));
        }
    }

    private static void requireKinds(VectorLayer layer) {
        List<String> problems = new ArrayList<>();
        for (Feature feature : layer.features()) {
            Geometry geometry = feature.geometry();
            if (!(geometry instanceof Point || geometry instanceof MultiPoint
                    || geometry instanceof Polygon || geometry instanceof MultiPolygon)) {
                problems.add(layer.file().getFileName() + ", feature " + feature.id() + ": is a "
                        + (geometry instanceof LineString ? "line" : geometry.getGeometryType())
                        + ", and a proposal holds points (one a module) or polygons; leave it out, or draw what is proposed");
                if (problems.size() == TOLD) {
                    break;
                }
            }
        }
        if (!problems.isEmpty()) {
            throw new InputException(problems);
        }
    }

    private static Set<String> attributes(VectorLayer layer) {
        Set<String> known = new LinkedHashSet<>();
        layer.features().forEach(feature -> known.addAll(feature.attributes().keySet()));
        return known;
    }

    private static String stated(VectorLayer layer, String wanted) {
        Set<String> known = attributes(layer);
        if (!known.contains(wanted)) {
            throw new InputException(layer.file().getFileName() + ": no feature has the attribute \"" + wanted
                    + "\" that --name asks for; " + (known.isEmpty() ? "it has none at all" : Suggestion.advice(wanted, known)));
        }
        return wanted;
    }

    private static Optional<String> usual(VectorLayer layer) {
        Set<String> known = attributes(layer);
        return NAMES.stream().flatMap(usual -> known.stream().filter(k -> k.strip().toLowerCase(Locale.ROOT).equals(usual)))
                .findFirst();
    }
}
