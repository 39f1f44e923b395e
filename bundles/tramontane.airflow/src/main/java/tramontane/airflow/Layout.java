package tramontane.airflow;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.airflow.internal.BankLaw;
import tramontane.airflow.internal.DipLaw;
import tramontane.analysis.FlowLaw;

/**
 * The network of an air path: a branch for each passage, one or more for each bank.
 *
 * @param network    the network
 * @param solver     a solver of it
 * @param branchesOf the branches of each passage
 * @param banks      each bank in parts, by number of its passage
 * @param dips       the branches of which there may be several duty points
 */
record Layout(Network network, NetworkSolver solver, int[][] branchesOf, Map<Integer, BankLaw.Parts> banks, List<Dip> dips) {

    /**
     * A branch whose curve does not fall all the way.
     *
     * @param part   number of its passage
     * @param branch number of the branch
     * @param like   the same for branches that may change places
     * @param law    its law
     */
    record Dip(int part, int branch, int like, DipLaw law) {
    }

    /**
     * Lays out.
     *
     * @param laws  the law of each passage; for banks a {@link BankLaw}
     * @param apart whether like columns of a bank need not share its flow evenly
     * @param like  one with other laws, whose solver is of use where the network is joined in the same way
     */
    static Layout of(AirPathModel model, List<AirPathModel.Part> parts, List<FlowLaw> laws, boolean apart, Optional<Layout> like) {
        List<Network.Branch> branches = new ArrayList<>();
        int[][] branchesOf = new int[parts.size()][];
        Map<Integer, BankLaw.Parts> banks = new HashMap<>();
        List<Dip> dips = new ArrayList<>();
        for (int e = 0; e < parts.size(); e++) {
            AirPathModel.Part part = parts.get(e);
            List<? extends FlowLaw> pieces = List.of(laws.get(e));
            if (laws.get(e) instanceof BankLaw bank) {
                banks.put(e, bank.parts(apart));
                pieces = banks.get(e).laws();
            }
            branchesOf[e] = new int[pieces.size()];
            for (int k = 0; k < pieces.size(); k++) {
                FlowLaw law = pieces.get(k);
                branchesOf[e][k] = branches.size();
                if (law instanceof BankLaw bank && !bank.increasing()) {
                    DipLaw dip = new DipLaw(bank);
                    dips.add(new Dip(e, branches.size(), 1000 * e + banks.get(e).like()[k], dip));
                    law = dip;
                }
                branches.add(new Network.Branch(part.passage().id(), part.from(), part.to(), law));
            }
        }
        Network network = new Network(model.bays().stream().map(bay -> new Network.Bay(bay.id(), AirPathModel.height(bay)))
                .toList(), branches);
        NetworkSolver solver = like.map(Layout::solver).filter(other -> other.joins(network)).map(other -> other.with(network))
                .orElseGet(() -> NetworkSolver.of(network));
        return new Layout(network, solver, branchesOf, Map.copyOf(banks), List.copyOf(dips));
    }

    /** Whether a solution is one of this network, as far as its branches tell. */
    boolean fits(NetworkSolution solution) {
        return network.branches().size() == solution.branches();
    }

    /** Mass flow of a passage, kg/s. */
    double massFlow(int e, NetworkSolution solution) {
        double sum = 0;
        for (int branch : branchesOf[e]) {
            sum += solution.massFlow(branch);
        }
        return sum;
    }

    /**
     * Density of the air that comes into a passage, kg/m³. Where a bank has several branches, some of which may run backwards,
     * it is that of the bay from which more comes than goes back.
     */
    double density(int e, NetworkSolution solution, NetworkAir air) {
        if (branchesOf[e].length == 1) {
            return solution.density(branchesOf[e][0]);
        }
        Network.Branch branch = network.branches().get(branchesOf[e][0]);
        return air.density(massFlow(e, solution) >= 0 ? branch.from() : branch.to());
    }

    /** Volume flow of a passage at the density of the air that comes in, m³/s. */
    double flow(int e, NetworkSolution solution, NetworkAir air) {
        return massFlow(e, solution) / density(e, solution, air);
    }

    /** Drop of a passage, Pa. */
    double drop(int e, NetworkSolution solution) {
        return solution.drop(branchesOf[e][0]);
    }

    /**
     * Where a column of a bank works.
     *
     * @param flow      volume flow of the air in it, m³/s
     * @param density   of that air, kg/m³
     * @param viscosity of that air, Pa s
     */
    record Column(double flow, double density, double viscosity) {
    }

    /** Where a column of a bank works: its air is that of its branch, which may run against the bank as a whole. */
    Column column(int e, int column, NetworkSolution solution, NetworkAir air) {
        BankLaw.Parts bank = banks.get(e);
        int part = bank.partOf()[column];
        int branch = branchesOf[e][part];
        Network.Branch ends = network.branches().get(branch);
        double viscosity = air.viscosity(solution.massFlow(branch) >= 0 ? ends.from() : ends.to());
        return new Column(bank.laws().get(part).columnFlow(bank.placeInPart()[column], solution.flow(branch),
                solution.density(branch), viscosity), solution.density(branch), viscosity);
    }
}
