package org.seacairn.layer;

import io.jhdf.api.Dataset;
import io.jhdf.api.Node;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** NetCDF-4: variables are the datasets of the root group, dimensions its dimension scales (HDF5). */
final class HdfNetCdf implements NetCdfFile {
    /** NC_MAX_NAME of the library. */
    private static final int LONGEST_NAME = 256;

    private final HdfStore store;
    private final Map<String, NetCdfVariable> variables = new LinkedHashMap<>();

    HdfNetCdf(Path file) {
        store = HdfStore.open(file);
        try {
            Map<String, Dataset> datasets = new LinkedHashMap<>();
            for (Node node : store.children("").values()) {
                String name = node.getName();
                if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
                    throw VectorReader.problem(file, "root group", "has a name that cannot be, \"" + XmlElements.shown(name)
                            + "\"; the file is damaged, get it again");
                }
                if (node instanceof Dataset dataset) {
                    datasets.put(name, dataset);
                }
            }
            datasets.forEach((name, dataset) -> variables.put(name, variable(name, dataset, datasets)));
        } catch (RuntimeException e) {
            store.close();
            throw e;
        }
    }

    private NetCdfVariable variable(String name, Dataset dataset, Map<String, Dataset> all) {
        int[] shape = store.ask(name, dataset::getDimensions);
        List<Long> scales = shape.length < 2 ? List.of() : store.dimensionScales(dataset);
        List<String> axes = new ArrayList<>();
        for (int i = 0; i < shape.length; i++) {
            long address = scales.isEmpty() ? -1 : scales.get(i);
            axes.add(shape.length == 1 ? name : all.values().stream().filter(d -> d.getAddress() == address).map(Node::getName)
                    .findFirst().orElse(""));
        }
        return new NetCdfVariable(name, axes, shape, store.attributes(dataset), store.number(dataset),
                () -> store.array(dataset, store.number(dataset).orElseThrow()));
    }

    @Override
    public Path file() {
        return store.file();
    }

    @Override
    public String format() {
        return "NetCDF-4";
    }

    @Override
    public Map<String, NetCdfVariable> variables() {
        return variables;
    }

    @Override
    public void close() throws IOException {
        store.close();
    }
}
