/**
 * Clearances on the ellipsoid, by code that shares nothing with the raster path: it takes vertices in
 * longitude and latitude and measures geodesics to geodesic edges.
 */
package org.seacairn.review;
