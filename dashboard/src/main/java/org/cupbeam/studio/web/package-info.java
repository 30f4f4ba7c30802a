/**
 * What people see: pages, and the live streams that keep them up to date.
 *
 * <p>Belongs here: HTTP, server-sent events, sign-in, and turning what the other rooms know into JSON for the pages,
 * which are plain files in the resources' folder {@code web}. Does not belong here: SQL, and any judgement about the
 * numbers.
 */
package org.cupbeam.studio.web;
