/**
 * Rows for people and other programs: tables written as CSV or JSON, and read back.
 *
 * <p>Belongs here: the two forms, and nothing of what is in them. Does not belong here: SQL, and what columns there are.
 */
package org.cupbeam.studio.store.sheet;
