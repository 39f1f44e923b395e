package tramontane.cli.terminal;

/** The order of texts in which numbers count as such: {@code passages[2]} before {@code passages[10]}. */
final class NaturalOrder {

    private NaturalOrder() {
    }

    static int compare(String one, String other) {
        int i = 0;
        int j = 0;
        while (i < one.length() && j < other.length()) {
            char a = one.charAt(i);
            char b = other.charAt(j);
            if (digit(a) && digit(b)) {
                int endA = number(one, i);
                int endB = number(other, j);
                int order = numbers(one.substring(i, endA), other.substring(j, endB));
                if (order != 0) {
                    return order;
                }
                i = endA;
                j = endB;
            } else if (a == b) {
                i++;
                j++;
            } else {
                return Character.compare(a, b);
            }
        }
        return Integer.compare(one.length() - i, other.length() - j);
    }

    private static int number(String text, int from) {
        int end = from;
        while (end < text.length() && digit(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static int numbers(String one, String other) {
        String a = one.replaceFirst("^0+(?=.)", "");
        String b = other.replaceFirst("^0+(?=.)", "");
        return a.length() != b.length() ? Integer.compare(a.length(), b.length()) : a.compareTo(b);
    }

    private static boolean digit(char c) {
        return c >= '0' && c <= '9';
    }
}
