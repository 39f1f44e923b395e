package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.cli.terminal.Ending;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/**
 * Room for a bank as it is written on the command line: {@code 170x90x60mm}, {@code 17cm x 90mm}.
 *
 * @param width  of the opening
 * @param height of the opening
 * @param depth  along the flow
 */
record Opening(Quantity width, Quantity height, Optional<Quantity> depth) {

    static final String OPTION = "--opening";

    static Opening parse(String text) throws Ending {
        // "max" or any other word with an x in it is no size either
        List<String> sides = Arrays.stream(text.split("[x×X*]", -1)).map(String::strip).toList();
        if (sides.size() < 2 || sides.size() > 3 || sides.stream().anyMatch(String::isEmpty)) {
            throw Ending.badInput(OPTION + " \"" + text + "\" is no opening; write width and height, and the depth along the flow if there is a limit: "
                    + "170x90x60mm.");
        }
        String unit = unit(sides.getLast());
        List<Quantity> lengths = new ArrayList<>();
        for (String side : sides) {
            lengths.add(length(unit(side).isEmpty() ? side + " " + unit : side));
        }
        return new Opening(lengths.get(0), lengths.get(1), lengths.size() == 3 ? Optional.of(lengths.get(2)) : Optional.empty());
    }

    private static String unit(String side) {
        int end = 0;
        while (end < side.length() && (Character.isDigit(side.charAt(end)) || ".,+-".indexOf(side.charAt(end)) >= 0)) {
            end++;
        }
        return side.substring(end).strip();
    }

    private static Quantity length(String text) throws Ending {
        try {
            double si = Units.parse(text.strip(), QuantityKind.LENGTH);
            if (!(si > 0)) {
                throw Ending.badInput(OPTION + " \"" + text.strip() + "\" must be above zero.");
            }
            return Quantity.of(si, text.strip());
        } catch (UnitException wrong) {
            throw Ending.badInput(OPTION + " " + wrong.getMessage() + ".");
        }
    }
}
