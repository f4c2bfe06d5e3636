package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.seacairn.layer.Feature;

/**
 * Measures chosen sites again, on the ellipsoid and against the original geometries, and tells where
 * that disagrees with what the raster path said of them.
 */
public final class SiteCheck {
    /** Rounding of coordinates; the spacing of sites is geodesic on both sides, so that nothing else may differ. */
    private static final double SPACING_SLACK_M = 1e-3;

    private SiteCheck() {}

    /** A chosen site, longitude and latitude on the datum of the working CRS. */
    public record Site(String id, double longitudeDeg, double latitudeDeg) {
        public Site {
            if (!Double.isFinite(longitudeDeg) || !(Math.abs(latitudeDeg) <= 90)) {
                throw new IllegalArgumentException(
                        "site " + id + " at longitude " + longitudeDeg + ", latitude " + latitudeDeg);
            }
        }
    }

    /**
     * What the raster path said of one site and one layer.
     *
     * @param rasterM its distance to the layer, or NaN: it gave none, so that only the requirement is checked
     * @param requiredM nothing nearer is allowed
     */
    public record Claim(double rasterM, double requiredM) {
        public Claim {
            // A comparison with NaN is never true, and would let every site pass.
            if (Double.isNaN(requiredM)) {
                throw new IllegalArgumentException("the required distance is no number");
            }
        }
    }

    /**
     * One layer and its claims.
     *
     * @param rule name in a disagreement, for example {@code keep-off:cables}
     * @param features longitude and latitude on the datum of the working CRS; none: infinitely far
     * @param claims one for each site, in the sites' order
     */
    public record Rule(String rule, List<Feature> features, List<Claim> claims) {}

    /**
     * @param site id of the site
     * @param rule name of the rule, or {@code apart:} and the id of the site that is too near
     * @param rasterM distance by the raster path; for {@code apart:} the spacing that it vouched for
     * @param ellipsoidM geodesic distance
     */
    public record Disagreement(String site, String rule, double rasterM, double ellipsoidM) {}

    /**
     * Every distance that differs from the raster path's by more than a tolerance or falls short of what
     * is required by more than it, then every pair of sites nearer than {@code apartM} to each other.
     *
     * @param apartM least spacing of sites in metres
     * @param toleranceM of distances to layers; sites' spacing must hold to a millimetre
     * @return in the order of the rules, then of the sites; empty: all is confirmed
     */
    public static List<Disagreement> check(
            List<Site> sites, List<Rule> rules, double apartM, double toleranceM, Geodesic geodesic) {
        if (!(apartM >= 0) || !(toleranceM >= 0)) {
            throw new IllegalArgumentException("apart " + apartM + " m, tolerance " + toleranceM + " m");
        }
        List<Disagreement> found = new ArrayList<>();
        for (Rule rule : rules) {
            if (rule.claims().size() != sites.size()) {
                throw new IllegalArgumentException(
                        rule.rule() + ": " + rule.claims().size() + " claims for " + sites.size() + " sites");
            }
            checkRule(sites, rule, toleranceM, geodesic, found);
        }
        checkSpacing(sites, apartM, geodesic, found);
        return found;
    }

    private static void checkRule(
            List<Site> sites, Rule rule, double toleranceM, Geodesic geodesic, List<Disagreement> found) {
        EllipsoidalDistance layer =
                rule.features().isEmpty() ? null : EllipsoidalDistance.of(rule.features(), geodesic);
        for (int i = 0; i < sites.size(); i++) {
            Site site = sites.get(i);
            Claim claim = rule.claims().get(i);
            double ellipsoidM = layer == null ? Double.POSITIVE_INFINITY
                    : layer.nearest(site.longitudeDeg(), site.latitudeDeg()).distanceM();
            // Infinity from infinity is NaN, which is no difference: both say that there is nothing.
            boolean differs = Math.abs(claim.rasterM() - ellipsoidM) > toleranceM;
            if (differs || ellipsoidM < claim.requiredM() - toleranceM) {
                found.add(new Disagreement(site.id(), rule.rule(), claim.rasterM(), ellipsoidM));
            }
        }
    }

    private static void checkSpacing(List<Site> sites, double apartM, Geodesic geodesic, List<Disagreement> found) {
        for (int i = 0; i < sites.size(); i++) {
            for (int j = i + 1; j < sites.size(); j++) {
                Site a = sites.get(i);
                Site b = sites.get(j);
                double gapM = geodesic.Inverse(a.latitudeDeg(), a.longitudeDeg(), b.latitudeDeg(), b.longitudeDeg(),
                        GeodesicMask.DISTANCE).s12;
                if (gapM < apartM - SPACING_SLACK_M) {
                    found.add(new Disagreement(b.id(), "apart:" + a.id(), apartM, gapM));
                }
            }
        }
    }
}
