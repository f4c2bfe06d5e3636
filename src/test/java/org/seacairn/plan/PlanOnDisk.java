package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.seacairn.InputException;

/** A folder with a plan and the files that it names, for the tests of this package. */
final class PlanOnDisk {
    /** The plan of the design page, with every key that it shows. Line 1 is the title. */
    static final String WHOLE = """
            title: Infill off Tamarack Point
            display: us                    # units of the reports
            crs: EPSG:32617
            cell: 20 m
            bathymetry:
              file: bathymetry.tif
              values: elevation
              unit: m
              datum: MLLW
              survey-order: 1a
            bottom:
              file: bottom-types.gpkg
              class: kind
              unmapped: exclude
              classes:
                mud:        {suitability: 0.45, shear-strength: 4 kPa, gradient: 1.5 kPa/m}
                sand:       {suitability: 1.0}
                hardbottom: never
            reefs: {file: reefs.csv, name: name, keep-off: 60 m}
            inside: {file: permit-areas.geojson}
            keep-off:
              - {layer: shipping lanes, file: lanes.shp,  distance: 500 m, comfortable: 1 nmi, position-uncertainty: 20 m, source: "invented rule 1"}
              - {layer: cables, file: cables.geojson, distance: 500 m, comfortable: 1000 m, source: "invented rule 2", confirmed: false, surface: true}
            limits: {depth: [60 m, 150 m], slope: 5 deg, clearance-above: 85 ft, height-share: 0.5}
            module: {file: module.yaml}
            current: {file: current.csv}
            criteria:
              depth:     {weight: 3, curve: [60 m, 80 m, 120 m, 150 m]}
              slope:     {weight: 2, curve: [0 deg, 0 deg, 2 deg, 5 deg]}
              bottom:    {weight: 3}
              clearance: {weight: 2}
              spacing:   {weight: 3, curve: [60 m, 150 m, 500 m, 1500 m]}
            combine: weighted-mean
            sites: {count: 25, apart: 150 m}
            """;

    /** The least that a plan needs. */
    static final String LEAST = """
            bathymetry:
              file: bathymetry.tif
              values: depth
              unit: m
            module:
              height: 9 m
              landing-radius: 25 m
            criteria:
              depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}
            sites: {apart: 150 m}
            """;

    static final String MODULE = """
            name: Pole on a slab
            height: 30 ft
            landing-radius: 25 m
            base: {shape: square, width: 8 ft, height: 2 ft, mass: 8.5 short_ton, volume: 2.5 m3, open-share: 10 %}
            pole: {diameter: 300 mm, length: 28 ft, mass: 1200 lb, volume: 0.1 yd3}
            drag: {base-axial: 1.2, pole-lateral: 0.9, uncertainty: 20 %}
            added-mass: {base-axial: 1}
            """;

    static final String CURRENT = """
            depth_m,speed_kn,toward_deg
            0,3.5,20
            50,1.5,30
            """;

    final Path folder;

    PlanOnDisk(Path folder) {
        this.folder = folder;
        for (String layer : List.of("bathymetry.tif", "bottom-types.gpkg", "reefs.csv", "permit-areas.geojson",
                "lanes.shp", "cables.geojson")) {
            write(layer, "");
        }
        write("module.yaml", MODULE);
        write("current.csv", CURRENT);
    }

    PlanOnDisk write(String name, String text) {
        try {
            Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    SitingPlan read(String plan) {
        write("plan.yaml", plan);
        return PlanReader.read(folder.resolve("plan.yaml"), false);
    }

    List<String> problems(String plan) {
        return assertThrows(InputException.class, () -> read(plan), "the plan was read").problems();
    }

    /** The plan with one stretch of text changed, which must be there once. */
    static String with(String plan, String old, String changed) {
        assertTrue(plan.indexOf(old) >= 0 && plan.indexOf(old) == plan.lastIndexOf(old), "not there once: " + old);
        return plan.replace(old, changed);
    }
}
