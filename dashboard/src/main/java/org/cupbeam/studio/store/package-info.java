/**
 * What the studio remembers, in SQL that SQLite and PostgreSQL both speak.
 *
 * <p>Belongs here: opening and migrating the database, keeping events and what they say (players, runs, attempts,
 * corrections), and the questions that more than one page asks. Does not belong here: conclusions (see
 * {@code insight}, {@code usage}) and pages.
 *
 * <p>One connection writes, under one lock; the others can only read. Several hosts at one PostgreSQL hand each other the pen,
 * and one at each broker keeps events ({@link org.cupbeam.studio.lease.Succession}).
 */
package org.cupbeam.studio.store;
