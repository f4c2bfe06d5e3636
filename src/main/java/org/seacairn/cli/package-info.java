/** picocli commands: read the arguments, call one thing, print. */
package org.seacairn.cli;
