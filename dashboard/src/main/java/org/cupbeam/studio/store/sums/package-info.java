/**
 * Sums that pages ask in place of all that was ever putted: what a player began and putted, whom a note is about. Quarter hours
 * of use are the store's own, and are made anew here with the others.
 *
 * <p>Belongs here: keeping the sums in step, within the transaction that changes what they are sums of, and what each must be; whether
 * what somebody remembers of runs still holds.
 * Does not belong here: asking them.
 */
package org.cupbeam.studio.store.sums;
