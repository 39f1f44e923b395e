package tramontane.launcher;

import java.util.List;

/**
 * A slice of the product: bundles that come and go together.
 *
 * @param id Maven coordinates of the feature itself
 * @param bundles the bundles, in the order of the file
 * @param configured whether the file holds configurations, which this launcher cannot apply
 */
record Feature(Coordinates id, List<Coordinates> bundles, boolean configured) {
    Feature {
        bundles = List.copyOf(bundles);
    }
}
