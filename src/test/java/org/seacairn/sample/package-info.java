/**
 * Makes {@code sample-layers/}: an invented coast, the same bytes every time.
 *
 * <p>Lengths are metres in the sample's own frame: x east and y north of the south-western corner of
 * the bathymetry ({@link org.seacairn.sample.SampleFrame}). {@link java.lang.StrictMath} throughout,
 * so that no processor's last bit decides a depth.
 */
package org.seacairn.sample;
