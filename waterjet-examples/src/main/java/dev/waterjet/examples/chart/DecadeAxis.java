package dev.waterjet.examples.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.axis.ValueTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** A logarithmic axis with ticks at 1, 2 and 5 of each decade, or at 1 alone where many decades are shown. */
final class DecadeAxis extends LogAxis {

    private static final long serialVersionUID = 1L;

    private static final int MANY_DECADES = 4;

    DecadeAxis(String label) {
        super(label);
        setSmallestValue(Double.MIN_NORMAL);
    }

    @Override
    public List<ValueTick> refreshTicks(Graphics2D g2, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
        boolean isAcross = RectangleEdge.isTopOrBottom(edge);
        double from = getRange().getLowerBound();
        double to = getRange().getUpperBound();
        int[] steps = Math.log10(to / from) > MANY_DECADES ? new int[] {1} : new int[] {1, 2, 5};
        List<ValueTick> ticks = new ArrayList<>();
        for (int decade = (int) Math.floor(Math.log10(from)); decade <= Math.ceil(Math.log10(to)); decade++) {
            for (int step : steps) {
                BigDecimal value = BigDecimal.valueOf(step).scaleByPowerOfTen(decade);
                double place = value.doubleValue();
                if (place >= from * (1 - 1e-9) && place <= to * (1 + 1e-9)) {
                    ticks.add(new NumberTick(
                            TickType.MAJOR,
                            place,
                            value.toPlainString(),
                            isAcross ? TextAnchor.TOP_CENTER : TextAnchor.CENTER_RIGHT,
                            TextAnchor.CENTER,
                            0));
                }
            }
        }
        return ticks;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
