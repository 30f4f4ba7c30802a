package org.cupbeam.studio.docs;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * Measured points on two logarithmic axes, as SVG that reads the same on a light page and a dark one.
 *
 * @param title what is shown
 * @param x     the axis to the right
 * @param y     the axis upward
 * @param bar   the value of y that is to be kept under, drawn across
 * @param lines the points of each line are in order of x
 */
record LogLogChart(String title, Axis x, Axis y, double bar, List<Line> lines) {
    private static final double LEFT = 70;
    private static final double RIGHT = 520;
    private static final double TOP = 56;
    private static final double BOTTOM = 330;
    private static final double NAME_GAP = 16;

    /** From {@code least} to {@code most}, with these values named. */
    record Axis(String name, double least, double most, List<Tick> ticks) {
        private double share(double value) {
            return Math.log(value / least) / Math.log(most / least);
        }
    }

    /** A value that has its name beside the axis. */
    record Tick(double value, String name) {
    }

    /** @param style {@code solid} or {@code dashed}, told apart without colour too */
    record Line(String name, String colour, Style style, List<Point> points) {
    }

    enum Style { SOLID, DASHED }

    record Point(double x, double y) {
    }

    String svg() {
        StringBuilder svg = new StringBuilder();
        add(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 760 400\" width=\"760\" height=\"400\" role=\"img\">%n"
                + "  <title>%s</title>%n  <style>%n    text { font: 13px \"DejaVu Sans\", Arial, sans-serif; fill: #1c2b33 }%n"
                + "    .big { font-size: 16px; font-weight: bold }%n    .mid { text-anchor: middle }%n    .end { text-anchor: end }%n"
                + "    .grid { stroke: #d9dfdb; stroke-width: 1 }%n    .bar { stroke: #b3261e; stroke-width: 1.5; stroke-dasharray: 2 4 }%n"
                + "    .line { fill: none; stroke-width: 2.5; stroke-linejoin: round }%n  </style>%n"
                + "  <rect fill=\"#fff\" width=\"760\" height=\"400\"/>%n  <text class=\"big\" x=\"24\" y=\"32\">%s</text>%n", title, title);
        axes(svg);
        add(svg, "  <line class=\"bar\" x1=\"%.0f\" y1=\"%.1f\" x2=\"%.0f\" y2=\"%.1f\"/>%n  <text x=\"%.0f\" y=\"%.1f\">the bar</text>%n",
                LEFT, down(bar), RIGHT, down(bar), LEFT + 6, down(bar) - 6);
        lines.forEach(line -> curve(svg, line));
        names(svg);
        return svg.append("</svg>\n").toString();
    }

    private void axes(StringBuilder svg) {
        for (Tick each : x.ticks()) {
            add(svg, "  <line class=\"grid\" x1=\"%.1f\" y1=\"%.0f\" x2=\"%.1f\" y2=\"%.0f\"/>%n  <text class=\"mid\" x=\"%.1f\" y=\"%.0f\">%s</text>%n",
                    right(each.value()), TOP, right(each.value()), BOTTOM, right(each.value()), BOTTOM + 20, each.name());
        }
        for (Tick each : y.ticks()) {
            add(svg, "  <line class=\"grid\" x1=\"%.0f\" y1=\"%.1f\" x2=\"%.0f\" y2=\"%.1f\"/>%n  <text class=\"end\" x=\"%.0f\" y=\"%.1f\">%s</text>%n",
                    LEFT, down(each.value()), RIGHT, down(each.value()), LEFT - 8, down(each.value()) + 4, each.name());
        }
        add(svg, "  <text class=\"mid\" x=\"%.0f\" y=\"%.0f\">%s</text>%n  <text x=\"24\" y=\"%.0f\">%s</text>%n", (LEFT + RIGHT) / 2,
                BOTTOM + 48, x.name(), TOP - 8, y.name());
    }

    private void curve(StringBuilder svg, Line line) {
        StringBuilder path = new StringBuilder();
        for (Point each : line.points()) {
            add(path, "%s%.1f,%.1f", path.isEmpty() ? "" : " ", right(each.x()), down(each.y()));
            add(svg, "  <circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"%s\"/>%n", right(each.x()), down(each.y()), line.colour());
        }
        add(svg, "  <polyline class=\"line\" stroke=\"%s\"%s points=\"%s\"/>%n", line.colour(),
                line.style() == Style.DASHED ? " stroke-dasharray=\"7 5\"" : "", path);
    }

    /** Each line's name to the right of all, as high as its end, or below the name above. */
    private void names(StringBuilder svg) {
        double free = TOP;
        DoubleUnaryOperator high = this::down;
        for (Line each : lines.stream().sorted((a, b) -> Double.compare(end(b).y(), end(a).y())).toList()) {
            double at = Math.max(free, high.applyAsDouble(end(each).y()) + 4);
            add(svg, "  <line stroke=\"%s\" stroke-width=\"2.5\"%s x1=\"%.0f\" y1=\"%.1f\" x2=\"%.0f\" y2=\"%.1f\"/>%n"
                            + "  <text x=\"%.0f\" y=\"%.1f\">%s</text>%n",
                    each.colour(), each.style() == Style.DASHED ? " stroke-dasharray=\"7 5\"" : "", RIGHT + 10, at - 4, RIGHT + 32, at - 4,
                    RIGHT + 38, at, each.name());
            free = at + NAME_GAP;
        }
    }

    private static Point end(Line line) {
        return line.points().get(line.points().size() - 1);
    }

    private double right(double value) {
        return LEFT + (RIGHT - LEFT) * x.share(value);
    }

    private double down(double value) {
        return BOTTOM - (BOTTOM - TOP) * y.share(value);
    }

    private static void add(StringBuilder to, String format, Object... values) {
        to.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values));
    }
}
