/* The cost that no network solver can avoid: per Newton step one sparse symmetric factorisation and solve.
   CHOLMOD (SuiteSparse) on the nodal matrix of a k x k grid of bays, symbolic analysis reused.
   Build: gcc -O2 sparse_limit.c -I/usr/include/suitesparse -lcholmod -o sparse_limit
   Run:   sparse_limit K REPS [0|1|2]   the last: simplicial, CHOLMOD's choice (default), supernodal
   Prints: nodes, ms of the analysis, median ms of factorisation and solve, entries of L. */
#include <cholmod.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double now(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

static int compare(const void *a, const void *b) {
    double x = *(double *) a, y = *(double *) b;
    return (x > y) - (x < y);
}

int main(int argc, char **argv) {
    int k = atoi(argv[1]), reps = atoi(argv[2]), n = k * k;
    cholmod_common c;
    cholmod_start(&c);
    if (argc > 3) {
        c.supernodal = atoi(argv[3]);
    }
    cholmod_triplet *T = cholmod_allocate_triplet(n, n, 3 * n, 1, CHOLMOD_REAL, &c);
    int *I = T->i, *J = T->j;
    double *X = T->x;
    int z = 0;
    for (int r = 0; r < k; r++) {
        for (int s = 0; s < k; s++) {
            int v = r * k + s;
            I[z] = v, J[z] = v, X[z++] = 4.01;
            if (s + 1 < k) {
                I[z] = v, J[z] = v + 1, X[z++] = -1;
            }
            if (r + 1 < k) {
                I[z] = v, J[z] = v + k, X[z++] = -1;
            }
        }
    }
    T->nnz = z;
    cholmod_sparse *A = cholmod_triplet_to_sparse(T, 0, &c);
    double t = now();
    cholmod_factor *L = cholmod_analyze(A, &c);
    double analysis = now() - t;
    cholmod_dense *b = cholmod_ones(n, 1, CHOLMOD_REAL, &c);
    double *taken = malloc(reps * sizeof *taken);
    for (int i = 0; i < reps; i++) {
        t = now();
        cholmod_factorize(A, L, &c);
        cholmod_dense *x = cholmod_solve(CHOLMOD_A, L, b, &c);
        taken[i] = now() - t;
        cholmod_free_dense(&x, &c);
    }
    qsort(taken, reps, sizeof *taken, compare);
    printf("nodes %d analyse_ms %.3f factor_solve_ms %.4f entries %.0f\n", n, analysis, taken[reps / 2], c.lnz);
    return 0;
}
