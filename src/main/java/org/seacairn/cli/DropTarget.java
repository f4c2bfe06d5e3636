package org.seacairn.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;
import org.seacairn.review.Proposal;
import org.seacairn.review.ProposedSite;

/**
 * Where a module is to stand: the place that {@code --at} tells.
 *
 * @param longitudeDeg on the working CRS's datum, as {@code latitudeDeg}
 */
record DropTarget(String name, double longitudeDeg, double latitudeDeg) {
    private static final int MOST_NAMES = 30;

    /** Longitudes may be counted eastward to 360; from here on they are -180 to 180. */
    DropTarget {
        longitudeDeg = turned(longitudeDeg);
    }

    private static double turned(double longitudeDeg) {
        return Math.abs(longitudeDeg) > 180 ? Math.IEEEremainder(longitudeDeg, 360) : longitudeDeg;
    }


    /**
     * @param at longitude and latitude (WGS 84) with a comma between, or the name of a site
     * @param sites file in which a site of that name is looked for
     * @throws InputException if it is neither
     */
    static DropTarget of(String at, Path sites, GridGeometry grid) {
        int comma = at.indexOf(',');
        if (comma >= 0) {
            Coordinate lonLat = place(at, at.substring(0, comma), at.substring(comma + 1));
            Coordinate here = Crs.WGS84.to(grid.crs().geographic()).apply(lonLat.x, lonLat.y);
            return new DropTarget("target", here.x, here.y);
        }
        return named(at, sites, grid);
    }

    private static Coordinate place(String at, String longitude, String latitude) {
        try {
            return new Coordinate(turned(CoordinateText.parseLongitude(longitude.strip())), CoordinateText.parseLatitude(latitude.strip()));
        } catch (InputException e) {
            throw new InputException("--at " + Shown.quoted(at) + ": " + e.getMessage()
                    + " (longitude first, then latitude, for example -85.3127,28.4410)", e);
        }
    }

    private static DropTarget named(String at, Path sites, GridGeometry grid) {
        if (!Files.exists(sites)) {
            throw new InputException("--at " + Shown.quoted(at) + ": there is no " + sites.getFileName() + " of a ranking in "
                    + sites.toAbsolutePath().getParent().getFileName() + " to look the site up in; run rank first, name a file with --sites,"
                    + " or give longitude and latitude, for example --at=-85.3127,28.4410");
        }
        Optional<String> none = Optional.empty();
        Proposal proposal = Proposal.read(new LayerFile("sites", sites.toAbsolutePath().normalize(), none, none, none, none, 0, Edges.GEODESIC),
                none, grid);
        List<ProposedSite> found = proposal.sites().stream().filter(site -> site.name().equals(at)).toList();
        if (found.size() != 1 || !found.get(0).isPoint()) {
            List<String> names = proposal.sites().stream().map(ProposedSite::name).toList();
            throw new InputException(sites.getFileName() + ": " + (found.size() > 1 ? "two sites are named " + Shown.quoted(at)
                    + "; give longitude and latitude" : found.size() == 1 ? Shown.quoted(at) + " is no point; give longitude and latitude"
                    : "no site is named " + Shown.quoted(at) + "; " + Suggestion.advice(at, names.subList(0, Math.min(MOST_NAMES, names.size())))));
        }
        Coordinate c = found.get(0).geometry().getCoordinate();
        return new DropTarget(at, c.x, c.y);
    }
}
