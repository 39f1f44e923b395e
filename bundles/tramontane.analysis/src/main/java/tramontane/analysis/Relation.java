package tramontane.analysis;

/**
 * A named formula with its published source; a constant in code.
 *
 * @param name     what it is called: {@code fan laws}
 * @param formula  the formula in plain text: {@code Q2 = Q1 n2/n1}
 * @param source   where it is published: author, title, year, equation; or "common practice"
 * @param validity where it holds; empty where it always does
 */
public record Relation(String name, String formula, String source, String validity) {
}
