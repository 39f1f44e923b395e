package tramontane.bench;

import java.util.Arrays;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.airflow.internal.SparseCholesky;

/** Factorisation and solution of the matrix of a grid: the one that the program in C takes. */
@State(Scope.Thread)
public class StepBenchmark {

    /** Nodes along a side. */
    @Param("10")
    public int side;

    private SparseCholesky matrix;
    private double[] diagonal;
    private double[] offDiagonal;
    private double[] x;

    /** Builds the matrix. */
    @Setup
    public void build() {
        int[] a = new int[2 * side * (side - 1)];
        int[] b = new int[a.length];
        int e = 0;
        for (int i = 0; i < side * side; i++) {
            if (i % side > 0) {
                a[e] = i - 1;
                b[e++] = i;
            }
            if (i >= side) {
                a[e] = i - side;
                b[e++] = i;
            }
        }
        matrix = SparseCholesky.of(side * side, a, b);
        diagonal = new double[side * side];
        offDiagonal = new double[e];
        x = new double[side * side];
        Arrays.fill(diagonal, 4.01);
        Arrays.fill(offDiagonal, -1);
    }

    /** One step's worth. */
    @Benchmark
    public double[] step() {
        Arrays.fill(x, 1);
        if (!matrix.factor(diagonal, offDiagonal)) {
            throw new IllegalStateException("not positive definite");
        }
        matrix.solve(x);
        return x;
    }
}
