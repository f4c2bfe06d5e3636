/**
 * How a module sinks through the current, where it lands, and whether it stands: screening figures that rank and
 * warn, not a lifting or mooring plan.
 */
package org.seacairn.drop;
