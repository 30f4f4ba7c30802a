/**
 * Sums that pages ask in place of all that was ever putted: what a player began and putted, whom a note is about. Quarter hours
 * of use are the store's own, and are made anew here with the others.
 *
 * <p>Belongs here: keeping the sums in step, within the transaction that changes what they are sums of, and what each must be; and how
 * often runs were changed, so that whoever remembers something of them knows whether it holds. Does not belong here: asking the sums.
 */
package org.cupbeam.studio.store.sums;
