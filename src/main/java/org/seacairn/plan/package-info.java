/**
 * The siting plan: reading it, its units, its validation.
 *
 * <p>Everything that leaves this package is in SI units (metres, degrees, kilograms, seconds,
 * pascals), whatever the plan's text was written in.
 */
package org.seacairn.plan;
