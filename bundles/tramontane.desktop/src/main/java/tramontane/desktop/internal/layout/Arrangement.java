package tramontane.desktop.internal.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import tramontane.desktop.Spot;
import tramontane.model.Value;

/**
 * Which views are open, and where: an immutable tree of halves, with stacks of views as its leaves.
 *
 * @param root the tree; always has one stack for each {@link Spot}, be it empty
 * @param full the view that fills the window; empty while none does
 */
public record Arrangement(Pane root, Optional<String> full) {

    /** Version of the form in which it is kept. */
    private static final int FORMAT = 1;

    /** A part of the window. */
    public sealed interface Pane {
    }

    /**
     * Two parts with a sash between.
     *
     * @param across whether they stand side by side
     * @param share  of the first, 0.05 to 0.95
     * @param first  left or above
     * @param second right or below
     */
    public record Halves(boolean across, double share, Pane first, Pane second) implements Pane {
        public Halves {
            share = Double.isFinite(share) ? Math.clamp(share, 0.05, 0.95) : 0.5;
        }
    }

    /**
     * Views one behind another.
     *
     * @param name  its own name; of those of the standard layout the spot's
     * @param views ids of its views, in the order of their tabs
     * @param front the one that can be seen; empty only where there is none
     */
    public record Stack(String name, List<String> views, String front) implements Pane {
        public Stack {
            views = List.copyOf(views);
            front = views.contains(front) ? front : views.isEmpty() ? "" : views.getFirst();
        }
    }

    /** Where a view is moved to, seen from a stack. */
    public enum Side {
        /** Into the stack. */
        WITHIN,
        /** Into a new stack beside it. */
        LEFT, RIGHT, ABOVE, BELOW
    }

    /**
     * The standard layout.
     *
     * @param views ids of views by spot, the first of each in front
     */
    public static Arrangement standard(Map<Spot, List<String>> views) {
        Pane middle = new Halves(false, 0.56, stack(views, Spot.MIDDLE), stack(views, Spot.BELOW_MIDDLE));
        Pane right = new Halves(false, 0.52, stack(views, Spot.RIGHT), stack(views, Spot.BELOW_RIGHT));
        Pane above = new Halves(true, 0.17, stack(views, Spot.LEFT), new Halves(true, 0.6, middle, right));
        return new Arrangement(new Halves(false, 0.775, above, stack(views, Spot.BOTTOM)), Optional.empty());
    }

    private static Stack stack(Map<Spot, List<String>> views, Spot spot) {
        List<String> here = views.getOrDefault(spot, List.of());
        return new Stack(name(spot), here, here.isEmpty() ? "" : here.getFirst());
    }

    private static String name(Spot spot) {
        return spot.name().toLowerCase(java.util.Locale.ROOT);
    }

    /** All stacks, from left to right and top to bottom. */
    public List<Stack> stacks() {
        List<Stack> all = new ArrayList<>();
        collect(root, all);
        return all;
    }

    private static void collect(Pane pane, List<Stack> into) {
        switch (pane) {
            case Stack stack -> into.add(stack);
            case Halves halves -> {
                collect(halves.first(), into);
                collect(halves.second(), into);
            }
        }
    }

    /** Ids of all open views. */
    public List<String> views() {
        return stacks().stream().flatMap(stack -> stack.views().stream()).toList();
    }

    /** The stack that a view is in. */
    public Optional<Stack> holding(String view) {
        return stacks().stream().filter(stack -> stack.views().contains(view)).findFirst();
    }

    /** This arrangement with a view open in front of its stack; one that is not open yet goes to its spot. */
    public Arrangement open(String view, Spot spot) {
        String target = holding(view).map(Stack::name).orElse(name(spot));
        Arrangement shown = change(target, stack -> {
            List<String> views = new ArrayList<>(stack.views());
            if (!views.contains(view)) {
                views.add(view);
            }
            return new Stack(stack.name(), views, view);
        });
        return full.isPresent() && !full.get().equals(view) ? new Arrangement(shown.root, Optional.empty()) : shown;
    }

    /** This arrangement with a view open at its spot, behind what stands in front there. */
    public Arrangement openBehind(String view, Spot spot) {
        return change(name(spot), stack -> stack.views().contains(view) ? stack
                : new Stack(stack.name(), with(stack.views(), view), stack.front().isEmpty() ? view : stack.front()));
    }

    /** This arrangement without a view. Stacks that are not of the standard layout go with their last view. */
    public Arrangement close(String view) {
        Optional<Stack> holder = holding(view);
        if (holder.isEmpty()) {
            return this;
        }
        Arrangement without = change(holder.get().name(), stack -> {
            int at = stack.views().indexOf(view);
            List<String> views = new ArrayList<>(stack.views());
            views.remove(at);
            String front = !stack.front().equals(view) ? stack.front() : views.isEmpty() ? "" : views.get(Math.max(0, at - 1));
            return new Stack(stack.name(), views, front);
        });
        return new Arrangement(pruned(without.root), full.filter(other -> !other.equals(view)));
    }

    /**
     * This arrangement with a view moved.
     *
     * @param view  an open view
     * @param stack the name of the stack that it is moved to or beside of
     * @param side  where
     */
    public Arrangement move(String view, String stack, Side side) {
        Optional<Stack> holder = holding(view);
        Optional<Stack> target = stacks().stream().filter(each -> each.name().equals(stack)).findFirst();
        if (holder.isEmpty() || target.isEmpty() || holder.get().name().equals(stack) && (side == Side.WITHIN
                || target.get().views().size() == 1)) {
            return this;
        }
        // its stack must outlive the move, in case the new one stands beside it
        Arrangement taken = change(holder.get().name(), each -> new Stack(each.name(), each.views().stream()
                .filter(other -> !other.equals(view)).toList(), each.front()));
        Arrangement put = side == Side.WITHIN ? taken.change(stack, each -> new Stack(each.name(), with(each.views(), view), view))
                : new Arrangement(replaced(taken.root, stack, each -> beside(each, new Stack(taken.freeName(), List.of(view), view),
                        side)), full);
        return new Arrangement(pruned(put.root), full);
    }

    /** This arrangement with a view one place to the left or right among the tabs of its stack. */
    public Arrangement reorder(String view, int to) {
        return holding(view).map(holder -> change(holder.name(), stack -> {
            List<String> views = new ArrayList<>(stack.views());
            views.remove(view);
            views.add(Math.clamp(to, 0, views.size()), view);
            return new Stack(stack.name(), views, stack.front());
        })).orElse(this);
    }

    /** This arrangement with a sash moved: the one whose halves begin and end with these stacks. */
    public Arrangement share(Halves halves, double share) {
        return new Arrangement(reshared(root, halves, share), full);
    }

    /** This arrangement with one view filling the window, or none. */
    public Arrangement fill(Optional<String> view) {
        return new Arrangement(root, view);
    }

    private Arrangement change(String stack, UnaryOperator<Stack> changed) {
        return new Arrangement(replaced(root, stack, changed::apply), full);
    }

    private static List<String> with(List<String> views, String view) {
        List<String> more = new ArrayList<>(views);
        more.add(view);
        return more;
    }

    private static Pane beside(Pane pane, Stack added, Side side) {
        return switch (side) {
            case LEFT -> new Halves(true, 0.5, added, pane);
            case RIGHT -> new Halves(true, 0.5, pane, added);
            case ABOVE -> new Halves(false, 0.5, added, pane);
            case BELOW, WITHIN -> new Halves(false, 0.5, pane, added);
        };
    }

    private String freeName() {
        List<String> taken = stacks().stream().map(Stack::name).toList();
        int number = 1;
        while (taken.contains("stack " + number)) {
            number++;
        }
        return "stack " + number;
    }

    private static Pane replaced(Pane pane, String stack, java.util.function.Function<Stack, Pane> changed) {
        return switch (pane) {
            case Stack leaf -> leaf.name().equals(stack) ? changed.apply(leaf) : leaf;
            case Halves halves -> new Halves(halves.across(), halves.share(), replaced(halves.first(), stack, changed),
                    replaced(halves.second(), stack, changed));
        };
    }

    private static Pane reshared(Pane pane, Halves which, double share) {
        return switch (pane) {
            case Stack leaf -> leaf;
            case Halves halves when halves.equals(which) -> new Halves(halves.across(), share, halves.first(), halves.second());
            case Halves halves -> new Halves(halves.across(), halves.share(), reshared(halves.first(), which, share),
                    reshared(halves.second(), which, share));
        };
    }

    /** Without empty stacks that are not of the standard layout. */
    private static Pane pruned(Pane pane) {
        return switch (pane) {
            case Stack leaf -> leaf;
            case Halves halves -> {
                Pane first = pruned(halves.first());
                Pane second = pruned(halves.second());
                yield passing(first) ? second : passing(second) ? first : new Halves(halves.across(), halves.share(), first, second);
            }
        };
    }

    private static boolean passing(Pane pane) {
        return pane instanceof Stack stack && stack.views().isEmpty() && !standard(stack.name());
    }

    private static boolean standard(String name) {
        for (Spot spot : Spot.values()) {
            if (name(spot).equals(name)) {
                return true;
            }
        }
        return false;
    }

    /** As it is kept in a file. */
    public Value.Tree tree() {
        Value.Tree kept = Value.Tree.EMPTY.with("format", Value.Num.of(FORMAT)).with("root", tree(root));
        return full.isPresent() ? kept.with("full", new Value.Text(full.get())) : kept;
    }

    private static Value tree(Pane pane) {
        return switch (pane) {
            case Stack stack -> Value.Tree.EMPTY.with("stack", new Value.Text(stack.name()))
                    .with("views", new Value.Items(stack.views().stream().<Value>map(Value.Text::new).toList()))
                    .with("front", new Value.Text(stack.front()));
            case Halves halves -> Value.Tree.EMPTY.with("across", new Value.Flag(halves.across()))
                    .with("share", Value.Num.of(Math.round(halves.share() * 1e4) / 1e4))
                    .with("first", tree(halves.first())).with("second", tree(halves.second()));
        };
    }

    /** Reads what {@link #tree} gave; empty where it is not a whole layout with every standard stack once and no view twice. */
    public static Optional<Arrangement> of(Value.Tree tree) {
        if (!(tree.get("format").orElse(null) instanceof Value.Num format) || format.number() != FORMAT) {
            return Optional.empty();
        }
        try {
            Arrangement read = new Arrangement(pane(tree.get("root").orElseThrow(), 0), tree.text("full"));
            List<String> names = read.stacks().stream().map(Stack::name).toList();
            boolean whole = names.stream().distinct().count() == names.size()
                    && read.views().stream().distinct().count() == read.views().size();
            for (Spot spot : Spot.values()) {
                whole &= names.contains(name(spot));
            }
            return whole ? Optional.of(read.fill(read.full.filter(read.views()::contains))) : Optional.empty();
        } catch (RuntimeException notALayout) {
            return Optional.empty();
        }
    }

    private static Pane pane(Value value, int depth) {
        if (depth > 50 || !(value instanceof Value.Tree tree)) {
            throw new IllegalArgumentException("not a pane");
        }
        if (tree.text("stack").isPresent()) {
            List<String> views = ((Value.Items) tree.get("views").orElseThrow()).values().stream()
                    .map(view -> ((Value.Text) view).text()).toList();
            return new Stack(tree.text("stack").get(), views, tree.text("front").orElse(""));
        }
        return new Halves(((Value.Flag) tree.get("across").orElseThrow()).on(), ((Value.Num) tree.get("share").orElseThrow()).number(),
                pane(tree.get("first").orElseThrow(), depth + 1), pane(tree.get("second").orElseThrow(), depth + 1));
    }
}
