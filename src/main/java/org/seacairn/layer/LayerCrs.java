package org.seacairn.layer;

import java.util.List;
import java.util.function.Supplier;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Which CRS a layer has: what the plan states goes before what the file states. */
final class LayerCrs {
    /** The end of every message about a file that does not tell its CRS. */
    static final String REMEDY = "; state its \"crs\", for example EPSG:4326";

    private LayerCrs() {}

    /**
     * @param ofFile the CRS that the file states; throws {@link InputException} if it states none
     * @param notes receives a line if the plan overrides another CRS of the file
     */
    static Crs choose(LayerFile source, Supplier<Crs> ofFile, List<String> notes) {
        if (source.crs().isEmpty()) {
            return ofFile.get();
        }
        Crs stated = byPlan(source);
        try {
            Crs own = ofFile.get();
            if (!own.equals(stated)) {
                notes.add("the plan's CRS " + stated.label() + " is used in place of the file's " + own.label());
            }
        } catch (InputException e) {
            notes.add("the CRS " + stated.label() + " is the plan's; the file states none that can be read");
        }
        return stated;
    }

    /**
     * For a format that is on WGS 84 by definition.
     *
     * @throws InputException if another CRS is stated for the file
     */
    static void requireWgs84(LayerFile source, String format) {
        if (source.crs().isPresent() && !byPlan(source).equals(Crs.WGS84)) {
            throw VectorReader.problem(source.file(), "layer \"" + source.label() + "\"", "its \"crs\" is stated as " + byPlan(source).label()
                    + ", but " + format + " is always longitude and latitude on WGS 84; leave \"crs\" out");
        }
    }

    /**
     * Reads what a file states of its CRS: a code, well-known text, or text of version 2, of which the EPSG code is taken.
     *
     * @throws InputException without a place, if it cannot be read
     */
    static Crs parse(String text) {
        try {
            return Crs.parse(text);
        } catch (InputException e) {
            if (WktText.isSecondVersion(text)) {
                return WktText.horizontal(text);
            }
            throw e;
        }
    }

    /** Reads the CRS of the plan, which must state one. */
    static Crs byPlan(LayerFile source) {
        try {
            return Crs.parse(source.crs().orElseThrow());
        } catch (InputException e) {
            throw VectorReader.problem(source.file(), "layer \"" + source.label() + "\"", e.getMessage(), e);
        }
    }
}
