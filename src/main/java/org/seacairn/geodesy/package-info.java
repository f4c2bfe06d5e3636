/** Coordinate reference systems, geodesics on the ellipsoid, geodesic buffers, coordinate text. */
package org.seacairn.geodesy;
