package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.measure.CsvText;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Reference value of the statistics of test cuts: a data set beside the file, the quantity in words, and the call of the
 * program that computed it, which holds the numbers of the prior.
 *
 * @param dataset name of the file of data; a name that ends in {@code none.csv} is of no data
 * @param quantity what was computed
 * @param call how it was computed
 * @param files content of a file by its name
 */
public record CutStatisticsRow(String dataset, String quantity, String call, UnaryOperator<String> files) {

    /** Published setting about which the pressure exponent turns the model: 345 MPa. */
    static final double REFERENCE_PRESSURE_MPA = 345;

    /** Rows of comma-separated text, without the header. */
    private List<CsvText.Row> table() {
        return CsvText.parse(files.apply(dataset));
    }

    int place(String column) {
        int place = table().get(0).cells().indexOf(column);
        if (place < 0) {
            throw new IllegalStateException(dataset + " has no column " + column);
        }
        return place;
    }

    boolean hasColumn(String name) {
        return table().get(0).cells().contains(name);
    }

    List<String> column(String name) {
        List<CsvText.Row> rows = table();
        int place = place(name);
        return rows.subList(1, rows.size()).stream()
                .map(row -> row.cells().get(place))
                .toList();
    }

    double[] numbers(String name) {
        return column(name).stream().mapToDouble(Double::parseDouble).toArray();
    }

    List<TestCut> cuts() {
        return TestCut.parse(files.apply(dataset));
    }

    /** Rows of the machinability model with published exponents, or with that of the pressure free. */
    CutRows rows(boolean hasPressure) {
        List<FeedExponent> freed = hasPressure ? List.of(FeedExponent.PRESSURE) : List.of();
        return AbilityRows.of(MachinabilityFeed.published(), freed, cuts());
    }

    CutRows plates() {
        return rows(false).withPlates(places("plate"));
    }

    int[] places(String column) {
        return AbilityRows.places(column(column));
    }

    /** Rows with other values and settings than those of the machinability model. */
    static CutRows rows(double[] y, double[]... settings) {
        double[][] x = new double[y.length][];
        Arrays.setAll(
                x,
                i -> IntStream.rangeClosed(0, settings.length)
                        .mapToDouble(j -> j == 0 ? 1 : settings[j - 1][i])
                        .toArray());
        return CutRows.exact(y, x);
    }

    /** First number after some words, in the quantity or the call. */
    double number(String pattern) {
        return number(pattern, Double.NaN);
    }

    double number(String pattern, double otherwise) {
        Matcher matcher = Pattern.compile(pattern).matcher(quantity + " | " + call);
        return matcher.find() ? Double.parseDouble(matcher.group(1)) : otherwise;
    }

    /** Index in square brackets, from 0. */
    int index() {
        return (int) number("\\[(\\d+)\\]") - 1;
    }

    boolean mentions(String words) {
        return quantity.contains(words);
    }
}
