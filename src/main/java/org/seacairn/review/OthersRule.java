package org.seacairn.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.layer.Feature;

/**
 * The proposed sites among themselves: points keep apart, polygons share no ground, and nothing is
 * proposed twice, by place or by name. Points are compared with points, polygons with polygons: who
 * proposes both usually means the points to stand in the polygon.
 */
final class OthersRule implements ReviewRule {
    /** Two points nearer than this are one place, written twice. */
    private static final double SAME_PLACE_M = 1;

    private final RuleText apart;
    private final RuleText overlap;
    private final RuleText duplicate;
    private final double apartM;
    private final WorkingMap map;
    private final Geodesic geodesic;
    private final List<ProposedSite> sites;
    private final Map<String, Integer> namesakes = new HashMap<>();
    /** Place of each site among those of its kind. */
    private final int[] places;
    private final Optional<EllipsoidalDistance> points;
    private final Optional<EllipsoidalDistance> polygons;

    OthersRule(RuleText apart, RuleText overlap, RuleText duplicate, double apartM, WorkingMap map, List<ProposedSite> sites) {
        this.apart = apart;
        this.overlap = overlap;
        this.duplicate = duplicate;
        this.apartM = apartM;
        this.map = map;
        this.geodesic = map.grid().crs().geodesic();
        this.sites = sites;
        this.places = new int[sites.size()];
        List<Feature> standing = new ArrayList<>();
        List<Feature> lying = new ArrayList<>();
        for (int i = 0; i < sites.size(); i++) {
            namesakes.merge(sites.get(i).name(), 1, Integer::sum);
            List<Feature> kind = sites.get(i).isPoint() ? standing : lying;
            places[i] = kind.size();
            kind.add(new Feature(i, sites.get(i).geometry(), Map.of()));
        }
        this.points = distance(standing);
        this.polygons = distance(lying);
    }

    private Optional<EllipsoidalDistance> distance(List<Feature> features) {
        return features.isEmpty() ? Optional.empty() : Optional.of(EllipsoidalDistance.of(features, geodesic));
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        if (sites.size() == 1) {
            return List.of();
        }
        List<Finding> found = new ArrayList<>();
        Optional<NearestApproach> nearest = site.isPoint() ? nearestPoint(index) : nearestPolygon(index);
        nearest.ifPresent(n -> found.add(site.isPoint() ? apart(site, n) : overlap(index, site, n)));
        found.add(duplicate(site, nearest));
        return found;
    }

    private Optional<NearestApproach> nearestPoint(int index) {
        Coordinate at = sites.get(index).geometry().getCoordinate();
        return points.orElseThrow().nearestBut(places[index], at.x, at.y).map(n -> new NearestApproach(
                n.distanceM(), n.azimuthDeg(), at.x, at.y, n.longitudeDeg(), n.latitudeDeg(), n.feature()));
    }

    private Optional<NearestApproach> nearestPolygon(int index) {
        Feature own = new Feature(index, sites.get(index).geometry(), Map.of());
        return NearestApproach.ofAllBut(places[index], EllipsoidalDistance.of(List.of(own), geodesic), polygons.orElseThrow());
    }

    private Finding apart(ProposedSite site, NearestApproach nearest) {
        Figures figures = Figures.metresAtLeast(apartM, nearest.distanceM(), 0);
        return finding(site, apart, nearest, figures, figures.verdict(), "");
    }

    private Finding overlap(int index, ProposedSite site, NearestApproach nearest) {
        Figures figures = Figures.metresAtLeast(0, nearest.distanceM(), 0);
        List<String> shared = new ArrayList<>();
        if (nearest.distanceM() == 0) {
            for (int i = 0; i < sites.size(); i++) {
                if (i != index && !sites.get(i).isPoint() && shareGround(site.geometry(), sites.get(i).geometry())) {
                    shared.add(sites.get(i).name());
                }
            }
        }
        return shared.isEmpty() ? finding(site, overlap, nearest, figures, figures.verdict(), "")
                : finding(site, overlap, nearest, figures, Verdict.FAIL, "shares ground with " + String.join(", ", shared));
    }

    private boolean shareGround(Geometry a, Geometry b) {
        Coordinate centre = a.getEnvelopeInternal().centre();
        double turned = 360 * Math.rint((b.getEnvelopeInternal().centre().x - centre.x) / 360);
        Envelope other = new Envelope(b.getEnvelopeInternal());
        other.translate(-turned, 0);
        Envelope own = new Envelope(a.getEnvelopeInternal());
        // Edges bulge out of the box of their ends; a quarter of the width is more than any does.
        own.expandBy(own.getWidth() / 4 + other.getWidth() / 4 + 1e-6, own.getHeight() / 4 + other.getHeight() / 4 + 0.1);
        if (!own.intersects(other)) {
            return false;
        }
        return !new SharedGround(a, geodesic).with(b).isEmpty();
    }

    private Finding duplicate(ProposedSite site, Optional<NearestApproach> nearest) {
        boolean samePlace = site.isPoint() && nearest.filter(n -> n.distanceM() <= SAME_PLACE_M).isPresent();
        boolean sameName = namesakes.get(site.name()) > 1;
        String note = samePlace ? "the same place as " + nameOf(nearest.orElseThrow()) + ", to a metre" : "";
        if (sameName) {
            note = (note.isEmpty() ? "" : note + "; ") + "its name is used " + namesakes.get(site.name()) + " times";
        }
        Verdict verdict = samePlace || sameName ? Verdict.FAIL : Verdict.PASS;
        Coordinate at = site.geometry().getCoordinate();
        NearestApproach shown = nearest.orElseGet(() -> new NearestApproach(
                Double.NaN, Double.NaN, at.x, at.y, Double.NaN, Double.NaN, null));
        double leastM = site.isPoint() ? SAME_PLACE_M : Double.NaN;
        return finding(site, duplicate, shown, Figures.metresAtLeast(leastM, shown.distanceM(), 0), verdict, note);
    }

    private String nameOf(NearestApproach nearest) {
        return nearest.feature() == null ? "" : sites.get((int) nearest.feature().id()).name();
    }

    private Finding finding(ProposedSite site, RuleText rule, NearestApproach n, Figures figures, Verdict verdict, String note) {
        Coordinate place = map.wgs84(n.placeLongitudeDeg(), n.placeLatitudeDeg());
        Coordinate other = n.feature() == null ? new Coordinate(Double.NaN, Double.NaN) : map.wgs84(n.longitudeDeg(), n.latitudeDeg());
        return new Finding(site.name(), rule, figures, verdict, nameOf(n), other.x, other.y, n.azimuthDeg(), place.x, place.y, note);
    }
}
