/**
 * Who may do what: the staff PIN, sessions, and the limit on tries.
 *
 * <p>Belongs here: whatever can be decided without knowing HTTP. Does not belong here: cookies, headers, pages.
 */
package org.cupbeam.studio.web.access;
