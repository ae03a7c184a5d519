package dev.waterjet.calibrate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Cautions of a fit. */
final class FitRemarks {

    private static final int FEW = 6;

    /** Probability of a false alarm in the whole list of cuts. */
    private static final double LEVEL = 0.05;

    private static final double HIGH_LEVERAGE = 0.5;
    private static final double FAR = 1;
    private static final int FEW_PLATES = 5;
    private static final double WIDE = 3;
    private static final double CONFLICT = 2.5;
    private static final double DOMINANT = 0.8;
    private static final int LADDER = 3;

    /** Degrees of freedom of tails below which cuts are taken for wrong. */
    private static final double CONTAMINATED = 2;

    private final CutFit fit;
    private final List<TestCut> cuts;
    private final List<Caution> remarks = new ArrayList<>();

    private FitRemarks(CutFit fit) {
        this.fit = fit;
        this.cuts = fit.cuts();
    }

    static List<Caution> of(CutFit fit) {
        FitRemarks remarks = new FitRemarks(fit);
        remarks.addFew();
        remarks.addInfluence();
        remarks.addPlates();
        remarks.addIntervals();
        remarks.addPrior();
        remarks.addTails();
        remarks.addGrooves();
        return List.copyOf(remarks.remarks);
    }

    private void addFew() {
        if (cuts.size() < FEW) {
            remarks.add(Caution.notice(Message.of(
                            "few-cuts", "the fit rests on {cuts} cuts; its intervals are wide, more cuts narrow them")
                    .with("cuts", cuts.size())));
        }
    }

    private void addInfluence() {
        FitRows rows = FitRows.of(fit);
        int freedom = cuts.size() - fit.names().size() - 1;
        for (int i = 0; i < cuts.size(); i++) {
            double deleted = rows.deleted()[i];
            if (deleted != 0 && freedom >= 1) {
                double probability = Influence.outlierProbability(deleted, cuts.size(), freedom);
                if (probability < LEVEL) {
                    remarks.add(Caution.warning(Message.of(
                                    "outlier",
                                    "{cut} is {deviations} standard deviations from what the other cuts give; check"
                                            + " it, or fit with a heavy-tailed scatter")
                            .with("cut", CutFit.label(cuts, i))
                            .with("deviations", Math.rint(100 * Math.abs(deleted)) / 100)
                            .with("probability", probability)));
                }
            }
            if (fit.names().size() > 1 && rows.leverages()[i] > HIGH_LEVERAGE) {
                remarks.add(Caution.notice(Message.of(
                                "leverage",
                                "{cut} determines a parameter almost alone; repeat it before you rely on the fit")
                        .with("cut", CutFit.label(cuts, i))
                        .with("leverage", rows.leverages()[i])));
            } else if (rows.cook()[i] > FAR && Double.isFinite(rows.cook()[i])) {
                remarks.add(Caution.notice(Message.of(
                                "influential-cut",
                                "without {cut} the fit would lie outside its own uncertainty; repeat that cut")
                        .with("cut", CutFit.label(cuts, i))
                        .with("cook", rows.cook()[i])));
            }
        }
    }

    private void addPlates() {
        int plates = fit.plates();
        long named = cuts.stream()
                .map(TestCut::plate)
                .filter(p -> !p.isEmpty())
                .distinct()
                .count();
        boolean areAllNamed = cuts.stream().noneMatch(cut -> cut.plate().isEmpty());
        if (plates == 1 || (plates == 0 && named == 1 && areAllNamed)) {
            remarks.add(Caution.warning(Message.of(
                    "one-plate",
                    "all cuts are from one plate; another plate may differ by more than the interval says")));
        } else if (plates > 1 && plates < FEW_PLATES) {
            remarks.add(Caution.notice(Message.of(
                            "few-plates",
                            "{plates} plates hardly show how plates differ; the interval of a new one is wide")
                    .with("plates", plates)));
        } else if (plates == 0 && named > 1 && named < cuts.size()) {
            remarks.add(Caution.warning(Message.of(
                    "plates-not-used",
                    "the cuts name plates, but the fit takes them as independent; fit with plates")));
        }
    }

    private void addIntervals() {
        for (int i = 0; i < cuts.size(); i++) {
            TestCut cut = cuts.get(i);
            if (cut.failedFeedSi() > WIDE * cut.feedSi()) {
                remarks.add(Caution.notice(
                        Message.of("wide-interval", "{cut} bounds the feed rate within a factor of more than 3 only")
                                .with("cut", CutFit.label(cuts, i))));
            }
        }
        double[] feeds = IntStream.range(0, cuts.size())
                .filter(i -> cuts.get(i).test() == TestCut.Test.SEPARATION)
                .mapToDouble(i -> cuts.get(i).feedSi())
                .toArray();
        if (Ladder.isLadder(feeds, LADDER)) {
            remarks.add(Caution.warning(Message.of(
                    "ladder-of-feeds",
                    "the separation feed rates lie on a ladder of steps: if each is the fastest that still separated,"
                            + " give the next step as the failed feed rate; else the fit is too low")));
        }
    }

    private void addTails() {
        if (fit.method() == CutFit.Method.HIGH_BREAKDOWN) {
            addLeftOut();
        }
        double freedom = fit.tailDegreesOfFreedom();
        if (fit.spec().tailFreedom() == CalibrationSpec.ESTIMATED && freedom < CONTAMINATED) {
            remarks.add(Caution.warning(Message.of(
                            "contaminated",
                            "the tails of the scatter are heavier than any process has ({freedom} degrees of freedom):"
                                    + " some cuts are wrong; see their weights")
                    .with("freedom", freedom)));
        }
    }

    /** Whether a cut is a groove less deep than the bore of the tube, whose depth falls faster with the feed rate. */
    static boolean isShallow(TestCut cut) {
        return cut.test() == TestCut.Test.DEPTH
                && cut.upperThicknessSi() < cut.jet().tubeBoreSi();
    }

    private void addGrooves() {
        long shallow = cuts.stream().filter(FitRemarks::isShallow).count();
        if (shallow == cuts.size()) {
            remarks.add(Caution.notice(Message.of(
                    "shallow-grooves-only",
                    "all cuts are grooves less deep than the bore of the focusing tube: the fit is for such grooves,"
                            + " not for cuts through a plate")));
        } else if (shallow > 0) {
            remarks.add(Caution.warning(Message.of(
                            "shallow-and-deep",
                            "{count} of {all} cuts are grooves less deep than the bore of the focusing tube, whose"
                                    + " depth decreases faster with the feed rate; fit them by themselves, with the feed"
                                    + " exponent")
                    .with("count", shallow)
                    .with("all", cuts.size())));
        }
    }

    private void addLeftOut() {
        double[] weights = FitRows.of(fit).weights();
        List<String> out = IntStream.range(0, cuts.size())
                .filter(i -> weights[i] == 0)
                .mapToObj(i -> CutFit.label(cuts, i))
                .toList();
        if (!out.isEmpty()) {
            remarks.add(Caution.warning(Message.of(
                            "cuts-left-out",
                            "{count} of {all} cuts are so far from the others that they have no part in the fit:"
                                    + " {cuts}; it withstands {withstood} wrong ones; find out what is different in them")
                    .with("count", out.size())
                    .with("all", cuts.size())
                    .with("cuts", String.join(", ", out))
                    .with("withstood", fit.withstoodCuts())));
        }
    }

    private void addPrior() {
        CutPrior prior = fit.spec().prior();
        if (prior == null) {
            return;
        }
        double error = Math.sqrt(fit.solution().covariance()[0][0]);
        double own = prior.machinability();
        double start = Math.log(fit.spec().family().starts(cuts).get(0).value());
        double off = Math.abs(fit.solution().variables()[0] - start);
        if (off > CONFLICT * Math.hypot(own, error)) {
            remarks.add(Caution.warning(Message.of(
                            "prior-conflict",
                            "the cuts differ from the catalogue by {deviations} of its standard deviations: the"
                                    + " material is not what the catalogue has, or a setting is wrong")
                    .with("deviations", off / own)));
        }
        if (error > DOMINANT * own) {
            remarks.add(Caution.notice(Message.of(
                    "prior-dominates", "the cuts say little beside the prior; make more, or closer to the limit")));
        }
    }
}
