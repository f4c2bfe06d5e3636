/**
 * The working grid: its geometry, windows of depth, terrain, exact distance, points in polygons.
 *
 * <p>Arrays of cells run row by row, row 0 in the north, column 0 in the west. A value is that of the
 * cell's centre; NaN is no-data.
 */
package org.seacairn.grid;
