package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;

/** Cuts and extends tool paths, in metres. */
final class ToolPathEditor {

    /** Stretches shorter than this are left out. */
    private static final double SHORT_M = 1e-8;

    private final ToolPath path;
    private final EdgeCursor edge = new EdgeCursor();
    private final EdgeCursor piece = new EdgeCursor();
    private final ContourBuilder builder;
    private final Stretches stretches = new Stretches();
    private double x;
    private double y;

    private ToolPathEditor(ToolPath path, double startX, double startY) {
        this.path = path;
        this.builder = Contour.fromSi(startX, startY);
        this.x = startX;
        this.y = startY;
    }

    static ToolPath withOvercut(ToolPath path, double lengthM) {
        Contour contour = path.contour().requireClosed();
        Require.positive("length of the overcut", lengthM, Units.MILLIMETRE);
        Require.atMost(
                "length of the overcut", lengthM, contour.lengthSi(), Units.MILLIMETRE, "the length of the path");
        ToolPathEditor editor = new ToolPathEditor(path, contour.xSi(0), contour.ySi(0));
        for (int i = 0; i < path.size(); i++) {
            editor.copy(i, 0, 1, path.purpose(i));
        }
        double left = lengthM;
        for (int i = 0; left > SHORT_M; i++) {
            contour.load(i, editor.edge);
            double length = editor.edge.length();
            editor.copy(i, 0, Math.min(1, left / length), ToolPath.Purpose.OVERCUT);
            left -= length;
        }
        return editor.open();
    }

    static ToolPath withTabs(ToolPath path, double[] tabsM, double gapM) {
        Contour contour = path.contour();
        double total = cutLength(path);
        double before = 0;
        for (int k = 0; k < tabsM.length; k++) {
            Require.atLeast(
                    "distance of a tab along the cut",
                    tabsM[k] - gapM / 2,
                    before,
                    Units.MILLIMETRE,
                    "the tab before it");
            before = tabsM[k] + gapM / 2;
        }
        Require.atMost("distance of a tab along the cut", before, total, Units.MILLIMETRE, "the length of the cut");
        ToolPathEditor editor = new ToolPathEditor(path, contour.xSi(0), contour.ySi(0));
        double at = 0;
        int next = 0;
        for (int i = 0; i < path.size(); i++) {
            contour.load(i, editor.edge);
            double length = editor.edge.length();
            if (path.purpose(i) != ToolPath.Purpose.CUT) {
                editor.copy(i, 0, 1, path.purpose(i));
                continue;
            }
            next = editor.copyWithTabs(i, at, length, tabsM, gapM, next);
            at += length;
        }
        return contour.isClosed() ? editor.closed() : editor.open();
    }

    private static double cutLength(ToolPath path) {
        return Kind.LENGTH.si(path.length(ToolPath.Purpose.CUT));
    }

    /** Copies an edge of the cut, of which some stretches are tabs; returns the first tab not finished. */
    private int copyWithTabs(int i, double at, double length, double[] tabsM, double gapM, int first) {
        double done = 0;
        int tab = first;
        while (tab < tabsM.length && tabsM[tab] - gapM / 2 < at + length) {
            double from = Math.max(0, (tabsM[tab] - gapM / 2 - at) / length);
            double to = Math.min(1, (tabsM[tab] + gapM / 2 - at) / length);
            copy(i, done, from, ToolPath.Purpose.CUT);
            copy(i, from, to, ToolPath.Purpose.TAB);
            done = to;
            if (tabsM[tab] + gapM / 2 > at + length) {
                return tab;
            }
            tab++;
        }
        copy(i, done, 1, ToolPath.Purpose.CUT);
        return tab;
    }

    private void copy(int i, double from, double to, ToolPath.Purpose purpose) {
        path.contour().load(i, edge);
        if ((to - from) * edge.length() <= SHORT_M) {
            return;
        }
        double toX = to == 1 ? edge.endX() : edge.xAt(to);
        double toY = to == 1 ? edge.endY() : edge.yAt(to);
        if (edge.isArc()) {
            piece.arc(x, y, toX, toY, edge.centreX(), edge.centreY(), edge.sweep() * (to - from));
        } else {
            piece.line(x, y, toX, toY);
        }
        builder.requirement(path.contour().requirement(i)).edgeTo(piece);
        stretches.addPart(path.stretches(), i, from, to, purpose);
        x = toX;
        y = toY;
    }

    private ToolPath open() {
        return new ToolPath(builder.open().named(path.contour().name()), path.partSide(), stretches);
    }

    private ToolPath closed() {
        return new ToolPath(builder.close().named(path.contour().name()), path.partSide(), stretches);
    }
}
