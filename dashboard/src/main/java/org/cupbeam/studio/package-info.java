/**
 * The all-in-one: broker, lanes and host in one JVM, the default on one board and in the demo.
 */
package org.cupbeam.studio;
