/**
 * The report: one HTML page that opens from disk, composed of the same objects that the files for programs are written from,
 * and the styles that its map is drawn with.
 */
package org.seacairn.report;
