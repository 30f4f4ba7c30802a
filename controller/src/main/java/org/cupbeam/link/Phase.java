package org.cupbeam.link;

/**
 * Where a link stands.
 *
 * <pre>
 *           +---------------------- failed, lost, or too slow --------------------+
 *           v                                                                     |
 *   start: AWAY --the wait is over--> CONNECTING --connected--> SUBSCRIBING --> ONLINE
 *           |                             |                         |             |
 *           |                             | asked to leave          |             | asked to leave
 *           +-----------------------------+-------------------------+             v
 *                                         |                                    LEAVING
 *                                         v                                       |
 *                                        LEFT &lt;--offline acknowledged, or 3 s-----+
 * </pre>
 */
enum Phase {
    /** Waiting for the next try. */
    AWAY,
    /** Waiting for the broker's word. */
    CONNECTING,
    /** Connected; waiting to hear commands. */
    SUBSCRIBING,
    /** Sending and hearing. */
    ONLINE,
    /** Saying goodbye. */
    LEAVING,
    /** For good. */
    LEFT
}
