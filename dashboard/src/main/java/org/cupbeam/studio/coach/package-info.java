/**
 * What the numbers say, kept at hand for whoever asks.
 *
 * <p>Belongs here: reading a player's putts from the store, having {@code insight} work them out, and remembering that until
 * the putts change. Does not belong here: conclusions (see {@code insight}), SQL (see {@code store}), and pages.
 */
package org.cupbeam.studio.coach;
