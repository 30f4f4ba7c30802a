/**
 * When a player's putting turned: control charts and change-points over sessions.
 *
 * <p>Belongs here: charts of putts set against their own chances, limits for a stated rate of false alarms, the sessions at
 * which something changed, and what did. Does not belong here: how those chances are found.
 */
package org.cupbeam.studio.insight.turn;
