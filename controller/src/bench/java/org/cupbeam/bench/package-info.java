/**
 * What the performance page reports, and how to measure it again. Compiled and run by the Maven profile {@code bench} alone;
 * nothing of it is a test, and nothing of the product may use it.
 */
package org.cupbeam.bench;
