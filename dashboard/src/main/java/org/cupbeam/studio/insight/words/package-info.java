/**
 * Numbers in plain words.
 *
 * <p>Belongs here: how a distance, a share or a day is said. Does not belong here: what there is to say; each result
 * says that itself.
 */
package org.cupbeam.studio.insight.words;
