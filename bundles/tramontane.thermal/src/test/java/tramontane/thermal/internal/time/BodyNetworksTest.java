package tramontane.thermal.internal.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.thermal.internal.Balancing;

/** Bodies in air at given flows against SciPy; see body_networks.py. */
class BodyNetworksTest {

    /** Error of a temperature, K: the table is within 2e-8 of the exact one, the integrator aims at 1e-8 in each of its steps. */
    private static final double CLOSE = 2e-7;
    /** Error of a time at which a limit is passed, s; temperatures there change by some 0.01 K/s. */
    private static final double PUNCTUAL = 5e-6;

    /** One network of the table. */
    record Given(String name, List<String[]> lines) {

        List<String[]> of(String kind) {
            return lines.stream().filter(line -> line[0].equals(kind)).toList();
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Given> networks() throws IOException {
        List<Given> all = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                BodyNetworksTest.class.getResourceAsStream("body_networks.csv"), StandardCharsets.UTF_8))) {
            for (String line : (Iterable<String>) reader.lines().filter(each -> !each.startsWith("#"))::iterator) {
                String[] fields = line.split(",", -1);
                if (fields[0].equals("network")) {
                    all.add(new Given(fields[1], new ArrayList<>()));
                }
                all.getLast().lines().add(fields);
            }
        }
        assertEquals(6, all.size());
        return all.stream();
    }

    private static double[] numbers(String text) {
        return text.isEmpty() ? new double[0] : Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    private static Network network(Given given) {
        String[] head = given.of("network").getFirst();
        int bays = Integer.parseInt(head[2]);
        int places = bays + Integer.parseInt(head[3]);
        List<String[]> parts = given.of("part");
        List<Bodies.Node> nodes = new ArrayList<>();
        double[] power = new double[parts.size()];
        double[][] resistance = new double[parts.size()][];
        for (int k = 0; k < parts.size(); k++) {
            double[] capacities = numbers(parts.get(k)[5]);
            power[k] = Double.parseDouble(parts.get(k)[3]);
            resistance[k] = numbers(parts.get(k)[6]);
            for (int i = 0; i < capacities.length; i++) {
                if (capacities[i] > 0) {
                    nodes.add(new Bodies.Node("", k, i, -1, capacities[i], 0));
                }
            }
        }
        given.of("chassis").forEach(line -> nodes.add(new Bodies.Node("", -1, -1, Integer.parseInt(line[1]),
                Double.parseDouble(line[2]), Double.parseDouble(line[3]))));
        Bodies bodies = Bodies.of(nodes, parts.size());
        List<Contacts.Giver> givers = new ArrayList<>();
        List<Double> heat = new ArrayList<>();
        List<Contacts.Local> airs = new ArrayList<>();
        for (int k = 0; k < parts.size(); k++) {
            givers.add(new Contacts.Giver(Integer.parseInt(parts.get(k)[1]), bodies.last(k), k, k, true));
            heat.add(power[k]);
        }
        given.of("loose").forEach(line -> {
            givers.add(new Contacts.Giver(Integer.parseInt(line[1]), -1, -1, -1, false));
            heat.add(Double.parseDouble(line[2]));
        });
        for (String[] part : parts) {
            int place = Integer.parseInt(part[1]);
            int[] there = IntStream.range(0, givers.size()).filter(g -> givers.get(g).place() == place).toArray();
            airs.add(new Contacts.Local(place, part[2].equals("1"), there, numbers(part[7])));
        }
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.get(i).part() < 0) {
                givers.add(new Contacts.Giver(nodes.get(i).place(), i, airs.size(), -1, true));
                heat.add(0.0);
                airs.add(new Contacts.Local(nodes.get(i).place(), false, new int[0], new double[0]));
            }
        }
        Contacts contacts = new Contacts(bays, places, givers, airs);
        List<String[]> ways = given.of("way");
        double[] capacity = column(ways, 4);
        Balancing.Carried carried = new Balancing.Carried(whole(ways, 1), whole(ways, 2), whole(ways, 3), capacity, capacity, column(ways, 5),
                column(ways, 6));
        double[] wallHeat = new double[bays];
        double[] wallSlope = new double[bays];
        given.of("wall").forEach(line -> {
            wallHeat[Integer.parseInt(line[1])] = Double.parseDouble(line[2]);
            wallSlope[Integer.parseInt(line[1])] = Double.parseDouble(line[3]);
        });
        AirSystem air = new AirSystem(contacts, AirSystem.Passing.of(contacts, carried), carried,
                Network.conductances(bodies, contacts, resistance), heat.stream().mapToDouble(Double::doubleValue).toArray(), wallHeat, wallSlope);
        return new Network(bodies, contacts, air, Double.parseDouble(head[4]), power, resistance);
    }

    private static double[] column(List<String[]> lines, int field) {
        return lines.stream().mapToDouble(line -> Double.parseDouble(line[field])).toArray();
    }

    private static int[] whole(List<String[]> lines, int field) {
        return lines.stream().mapToInt(line -> Integer.parseInt(line[field])).toArray();
    }

    private static double difference(String expected, double[] found) {
        double[] numbers = numbers(expected);
        assertEquals(numbers.length, found.length);
        return IntStream.range(0, found.length).mapToDouble(i -> Math.abs(numbers[i] - found[i])).max().orElse(0);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("networks")
    void temperaturesAreThoseOfAnotherIntegrator(Given given) {
        Network network = network(given);
        double[] temperatures = new double[network.getDimension()];
        Arrays.fill(temperatures, Double.parseDouble(given.of("start").getFirst()[1]));
        Extremes extremes = new Extremes(column(given.of("part"), 4));
        extremes.at(0, network.read(temperatures).junction());
        double time = 0;
        double far = 0;
        for (String[] at : given.of("at")) {
            double to = Double.parseDouble(at[1]);
            Plant.Held held = new Plant.Held(network, network.read(temperatures), null, null, null, new double[0], true);
            temperatures = new Integration(null, extremes, 0).run(held, null, temperatures, time, to).temperatures();
            time = to;
            Network.Reading reading = network.read(temperatures);
            far = Math.max(far, difference(at[2], temperatures));
            far = Math.max(far, difference(at[3], reading.bay()));
            far = Math.max(far, difference(at[4], reading.junction()));
        }
        double late = 0;
        for (String[] line : given.of("reached")) {
            late = Math.max(late, Math.abs(extremes.reached(Integer.parseInt(line[1])) - Double.parseDouble(line[2])));
        }
        assertTrue(far < CLOSE, far + " K apart");
        assertTrue(late < PUNCTUAL, late + " s apart");
    }
}
