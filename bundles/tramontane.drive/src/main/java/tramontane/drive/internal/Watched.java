package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.analysis.SpeedLaw;
import tramontane.drive.AlarmWindow;
import tramontane.drive.BankDrive;
import tramontane.drive.Feeding;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.physics.units.QuantityKind;

/**
 * The speeds of the healthy and of the failed movers of a bank that is watched, over all cases and at the lowest settings of its
 * control laws.
 *
 * @param bank        the bank
 * @param part        what its part says
 * @param slowest     lowest speed of a mover under power, rad/s
 * @param slowestCase where it is
 * @param failedFlow  largest flow through a failed mover that is free to turn, m³/s
 * @param failedCase  where it is
 * @param turned      speed to which that flow turns it, rad/s
 * @param share       highest speed of a failed mover over the speed asked for in its case
 * @param stands      control law that lets healthy movers stand
 * @param before      time after which its first mover starts: those of banks before it on its supply start first, s
 */
record Watched(FitAnalysis.Fitted bank, MoverDrive part, double slowest, String slowestCase, double failedFlow, Optional<String> failedCase,
        double turned, double share, Optional<String> stands, double before) {

    /** The watched bank; empty where nobody watches it, it tells nothing, or no mover runs in any case. */
    static Optional<Watched> of(Design design, FitAnalysis.Fitted bank, Map<String, OperatingPoint> points, Decoding decoding) {
        Signal wanted = bank.drive().watch();
        if (bank.part().isEmpty() || wanted == Signal.NONE && bank.drive().alarm().isEmpty() || bank.part().get().signal().kind() == Signal.NONE) {
            return Optional.empty();
        }
        Seen seen = new Seen(bank, decoding);
        for (Engine.Case each : Cases.of(design, Set.of()).list()) {
            OperatingPoint point = points.get(each.concrete().id());
            if (point != null) {
                point.bank(bank.bank().id()).ifPresent(at -> seen.at(design, each.concrete(), at));
            }
        }
        return seen.slowest == Double.POSITIVE_INFINITY ? Optional.empty() : Optional.of(new Watched(bank, bank.part().get(), seen.slowest,
                seen.slowestCase, seen.failedFlow, seen.failedCase, seen.turned, seen.share, seen.stands, before(design, bank, decoding)));
    }

    /** Movers of banks on one supply start one bank after another, in the order of the design. */
    private static double before(Design design, FitAnalysis.Fitted bank, Decoding decoding) {
        double time = 0;
        for (FitAnalysis.Fitted each : FitAnalysis.banks(design, decoding)) {
            if (each.bank().id().equals(bank.bank().id())) {
                return bank.drive().interval() > 0 ? time : 0;
            }
            boolean same = each.drive().supply().isPresent() && each.drive().supply().equals(bank.drive().supply());
            time += same ? Banks.positions(each.bank()) * each.drive().interval() : 0;
        }
        return 0;
    }

    /** What was seen so far. */
    private static final class Seen {
        private final FitAnalysis.Fitted bank;
        private final Decoding decoding;
        private double slowest = Double.POSITIVE_INFINITY;
        private String slowestCase = "";
        private double failedFlow;
        private Optional<String> failedCase = Optional.empty();
        private double turned;
        private double share;
        private Optional<String> stands = Optional.empty();

        Seen(FitAnalysis.Fitted bank, Decoding decoding) {
            this.bank = bank;
            this.decoding = decoding;
        }

        void at(Design design, Condition condition, OperatingPoint.BankPoint at) {
            if (at.speed() > 0) {
                slower(at.speed(), "condition " + condition.id());
            }
            for (ControlLaw law : design.controlLaws()) {
                if (Decoding.drives(law, bank.bank().id()) && law.speed().size() > 0 && condition.speed().isEmpty()) {
                    double lowest = java.util.Arrays.stream(law.speed().toArray()).min().orElseThrow();
                    Optional<Feeding> fed = FedSpeed.of(new SpeedLaw.Supply(design, bank.bank(), bank.mover(), condition, lowest, at.density(),
                            at.temperature()), decoding);
                    fed.filter(each -> each.speed() > 0).ifPresent(each -> slower(each.speed(), "lowest setting of control law " + law.id()));
                    if (fed.filter(each -> each.speed() == 0).isPresent()) {
                        stands = Optional.of(law.id());
                    }
                }
            }
            for (OperatingPoint.MoverPoint mover : at.movers()) {
                boolean freewheels = !mover.running() && condition.failed().stream().anyMatch(each -> each.state() == FailedMover.State.FREEWHEELING
                        && each.bank().orElse(bank.bank().id()).equals(bank.bank().id())
                        && each.position().filter(position -> position == mover.position()).isPresent());
                double free = SupplyFindings.freeFlow(bank.mover());
                double rated = bank.mover().ratedSpeedSi().orElse(0.0);
                if (freewheels && free > 0 && Math.abs(mover.flow()) > failedFlow) {
                    failedFlow = Math.abs(mover.flow());
                    failedCase = Optional.of("condition " + condition.id());
                    turned = rated * failedFlow / free;
                }
                if (freewheels && free > 0 && at.speed() > 0) {
                    share = Math.max(share, rated * Math.abs(mover.flow()) / free / at.speed());
                }
            }
        }

        private void slower(double speed, String where) {
            if (speed < slowest) {
                slowest = speed;
                slowestCase = where;
            }
        }
    }

    private BankDrive.Alarm alarm() {
        return bank.drive().alarm().orElse(new BankDrive.Alarm(Optional.empty(), Optional.empty(), 0, Optional.empty(), 0));
    }

    /** Whether it tells its speed, rather than only whether it stands. */
    boolean counts() {
        return part.signal().kind() == Signal.SPEED;
    }

    /** Pulses per revolution. */
    int pulses() {
        return part.signal().pulses();
    }

    /** Relative tolerance of the speed of the part. */
    double tolerance() {
        return part.control().tolerance();
    }

    /** Relative tolerance of the threshold. */
    double thresholdTolerance() {
        return alarm().tolerance();
    }

    /** By how much a count of pulses may be off, rad/s. */
    double counting() {
        return alarm().gate().map(gate -> 2 * Math.PI / (pulses() * gate)).orElse(0.0);
    }

    /** The thresholds that are possible. */
    AlarmWindow.Bank window() {
        double healthy = slowest * (1 - tolerance());
        String id = bank.bank().id();
        if (!counts()) {
            return new AlarmWindow.Bank(id, healthy, turned, turned, healthy, false, part.signal().locked());
        }
        double above = 1 + thresholdTolerance();
        double below = 1 - thresholdTolerance();
        if (alarm().share().isPresent()) {
            return new AlarmWindow.Bank(id, healthy, turned, shareFrom(), shareTo(), true, alarm().share());
        }
        return new AlarmWindow.Bank(id, healthy, turned, (turned + counting()) / below, (healthy - counting()) / above, false, alarm().speed());
    }

    /** Whether a share of the speed asked for would tell them apart. */
    private boolean shared() {
        return alarm().share().isEmpty() && shareFrom() < shareTo();
    }

    /** Lowest share that a failed mover never passes. */
    double shareFrom() {
        return (share + counting() / slowest) / (1 - thresholdTolerance());
    }

    /** Highest share that a healthy mover never falls below; a count that is off by a pulse weighs most at the lowest speed. */
    double shareTo() {
        return (1 - tolerance() - counting() / slowest) / (1 + thresholdTolerance());
    }

    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        AlarmWindow.Bank window = window();
        String id = bank.bank().id();
        stands.ifPresent(law -> findings.add(Finding.caution(id, "control law " + law + " lets healthy movers of " + bank.who()
                + " stand, and then they set the alarm off").remedy("mute the alarm while they are set to stand, or raise the lowest setting")));
        if (!counts()) {
            lockedRotor(window, findings);
            return findings;
        }
        if (!window.possible()) {
            boolean byCount = counting() > 0 && window.failed() < window.lowest() * (1 - thresholdTolerance()) / (1 + thresholdTolerance());
            findings.add(Finding.of(Severity.NOT_MET, id, "no alarm threshold tells failed movers of " + bank.who()
                    + " from healthy ones: healthy ones"
                    + " turn at no less than ", speed(window.lowest()), " (" + slowestCase + "), failed ones " + (window.failed() > 0
                            ? "at up to " : ""),
                    window.failed() > 0 ? speed(window.failed()) : "stand", counting() > 0 ? ", a count is off by up to " : "",
                    counting() > 0 ? speed(counting()) : "").remedy(byCount ? "count for longer, or measure the distance of pulses"
                            : shared() ? "state it as a share of the speed that is asked for, which tells them apart" : window.failed() > 0
                            ? "raise the lowest speed, fit flaps, or narrow the tolerances" : "narrow the tolerances"));
        } else if (window.stated().isEmpty()) {
            findings.add(Finding.note(id, "an alarm of " + bank.who() + " may be set between ", amount(window, window.from()), " and ",
                    amount(window, window.to())).remedy("set it to ", amount(window, (window.from() + window.to()) / 2)));
        } else if (!window.holds()) {
            double stated = window.stated().get();
            boolean high = stated >= window.to();
            findings.add(Finding.of(Severity.NOT_MET, id, "the alarm of " + bank.who() + " at ", amount(window, stated), high
                    ? " may go off while all is well: a healthy mover may turn at no more than "
                            : " may miss a failed mover, which air turns at up to ",
                    speed(high ? window.lowest() : window.failed()), " (" + (high ? slowestCase : failedCase.orElse("counted with its error")) + ")")
                    .remedy("set it between ", amount(window, window.from()), " and ", amount(window, window.to())));
        }
        double last = before + (Banks.positions(bank.bank()) - 1) * bank.drive().interval();
        Optional<Double> start = part.supply().startTime().map(time -> last + time);
        if (bank.drive().alarm().isPresent() && start.filter(time -> alarm().delay() < time).isPresent()) {
            findings.add(Finding.of(Severity.NOT_MET, id, "the alarm of " + bank.who() + " waits ", seconds(alarm().delay()), last > 0
                    ? ", but the last of the movers, which start one after another, has run up only after " : ", but the movers take ",
                            seconds(start.get()),
                    last > 0 ? ": it goes off at every start" : " to run up: it goes off at every start").remedy("let it wait for more than ",
                    seconds(start.get()), ", or mute it while they start"));
        }
        return findings;
    }

    private void lockedRotor(AlarmWindow.Bank window, List<Finding> findings) {
        String id = bank.bank().id();
        if (window.stated().isEmpty()) {
            findings.add(Finding.of(Severity.NOT_JUDGED, id, "nothing says below which speed the locked-rotor signal of " + bank.who() + " comes")
                    .remedy("state lockedBelow in the drive section of the part"));
        } else if (window.stated().get() >= window.lowest()) {
            findings.add(Finding.of(Severity.NOT_MET, id, "the locked-rotor signal of " + bank.who() + " comes below ", speed(window.stated().get()),
                    ", and healthy movers may turn at no more than ", speed(window.lowest()), " (" + slowestCase + ")")
                            .remedy("raise the lowest speed, or"
                    + " take a part with a tacho"));
        } else if (window.failed() >= window.stated().get()) {
            findings.add(Finding.of(Severity.NOT_MET, id, "the locked-rotor signal of " + bank.who() + " comes below ", speed(window.stated().get()),
                    ", but air may turn a failed mover at up to ", speed(window.failed())).remedy("fit flaps, or take a part with a tacho"));
        }
    }

    private static Amount amount(AlarmWindow.Bank window, double threshold) {
        return window.byShare() ? new Amount(threshold, QuantityKind.FRACTION) : speed(threshold);
    }

    private static Amount speed(double speed) {
        return new Amount(speed, QuantityKind.ROTATIONAL_SPEED);
    }

    private static Amount seconds(double seconds) {
        return new Amount(seconds, QuantityKind.TIME);
    }
}
