package org.seacairn.layer;

import java.io.Closeable;
import java.nio.file.Path;
import java.util.Map;

/** A NetCDF file: its variables by name. */
interface NetCdfFile extends Closeable {
    Path file();

    /** The format's name with its version, for reports. */
    String format();

    Map<String, NetCdfVariable> variables();
}
