package org.cupbeam.studio.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** The one cookie: a session's id, which no script reads and no other site has sent along. */
final class Cookies {
    private static final String NAME = "cupbeam-staff";

    private Cookies() {
    }

    /** The id that the browser holds, or null. */
    static String session(HttpServletRequest request) {
        if (request.getCookies() != null) {
            for (Cookie each : request.getCookies()) {
                if (each.getName().equals(NAME)) {
                    return each.getValue();
                }
            }
        }
        return null;
    }

    /** Over TLS, also where that ends at a proxy that is believed, it is for TLS alone. */
    static void give(HttpServletRequest request, HttpServletResponse response, String id) {
        response.addHeader("Set-Cookie", NAME + "=" + id + "; Path=/; HttpOnly; SameSite=Strict"
                + (request.isSecure() ? "; Secure" : ""));
    }

    static void takeAway(HttpServletResponse response) {
        response.addHeader("Set-Cookie", NAME + "=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0");
    }
}
