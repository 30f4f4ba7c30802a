/**
 * What is weak: kinds of putts that a player holes less often than their other putts would have it.
 *
 * <p>Belongs here: differences between kinds with partial pooling, what misses have in common, three-putts. Does not
 * belong here: what changed over time, and what to do about it.
 */
package org.cupbeam.studio.insight.weak;
