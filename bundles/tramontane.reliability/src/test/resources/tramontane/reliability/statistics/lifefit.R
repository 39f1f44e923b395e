# Makes lifefit-data.csv and lifefit-golden.csv: maximum likelihood fits by survival::survreg, covariances of (coefficients, ln sigma),
# and likelihood-ratio bounds by a profile written here, independent of the program under test.
# Run: Rscript lifefit.R   (R 4.2.2, survival 3.5-3), in this folder.
suppressMessages(library(survival))
set.seed(20240917)

sets <- list()
add <- function(name, from, to, count = rep(1, length(from)), x = rep(NA, length(from))) {
  sets[[name]] <<- data.frame(set = name, from = from, to = to, count = count, x = x)
}
round6 <- function(t) signif(t, 6)
right <- function(t, c) { t <- round6(t); c <- round6(rep_len(c, length(t))); list(from = pmin(t, c), to = ifelse(t <= c, t, Inf)) }

add("handbook", c(54, 187, 216, 240, 244, 335, 361, 373, 375, 386, rep(500, 10)), c(54, 187, 216, 240, 244, 335, 361, 373, 375, 386, rep(Inf, 10)))
add("ovarian", ovarian$futime, ifelse(ovarian$fustat == 1, ovarian$futime, Inf))
add("lung", lung$time, ifelse(lung$status == 2, lung$time, Inf))
for (n in c(3, 5, 8, 13, 30, 100, 400)) {
  t <- round6(rweibull(n, runif(1, 0.6, 4), 10^runif(1, 0, 5)))
  add(paste0("complete", n), t, t)
}
for (n in c(6, 10, 20, 50, 150)) {
  shape <- runif(1, 0.7, 3.5); scale <- 10^runif(1, 1, 5)
  d <- right(rweibull(n, shape, scale), scale * (-log(0.6))^(1 / shape))
  add(paste0("ended", n), d$from, d$to)
  d <- right(rlnorm(n, 7, 0.8), runif(n, 300, 3000))
  add(paste0("removed", n), d$from, d$to)
}
for (n in c(12, 40, 200)) {
  t <- rweibull(n, 2, 1000); k <- findInterval(t, seq(0, 1600, 200))
  add(paste0("looks", n), c(0, seq(200, 1600, 200))[k], c(seq(200, 1600, 200), Inf)[k])
}
for (n in c(15, 60)) {
  look <- round6(runif(n, 200, 2000)); t <- rlnorm(n, log(900), 0.7)
  add(paste0("once", n), ifelse(t < look, 0, look), ifelse(t < look, look, Inf))
}
for (n in c(9, 25, 80)) {
  t <- round6(rweibull(n, 1.5, 5000)); kind <- rep_len(c("exact", "right", "left", "between"), n)
  add(paste0("mixed", n), ifelse(kind == "exact", t, ifelse(kind == "left", 0, round6(0.8 * t))),
      ifelse(kind == "exact", t, ifelse(kind == "right", Inf, round6(1.3 * t))))
}
for (n in c(4, 10, 25)) {
  t <- round6(sort(rweibull(n, 2.5, 800)))
  add(paste0("counts", n), c(t, 700, 0), c(t, Inf, 300), c(sample(1:9, n, TRUE), 40, 3))
}
add("rare", c(1200, 3400, 8760), c(1200, 3400, Inf), c(1, 1, 60))
for (n in c(4, 10, 30)) {
  x <- rep(c(358.15, 378.15, 398.15), each = n)
  d <- right(exp(-20 + 0.7 / (8.617333262e-5 * x)) * rweibull(3 * n, 2.2, 1) * 800, 20000)
  add(paste0("arrhenius", n), d$from, d$to, x = round(1 / (8.617333262e-5 * x), 9))
}
for (n in c(6, 20)) {
  x <- rep(c(333.15, 353.15), each = n)
  t <- 4e4 * 2^(-(x - 313.15) / 10) * rlnorm(2 * n, 0, 0.4); k <- findInterval(t, seq(0, 20000, 1000))
  add(paste0("tenkelvin", n), c(0, seq(1000, 20000, 1000))[k], c(seq(1000, 20000, 1000), Inf)[k], x = x / 10)
}
data <- do.call(rbind, sets)

logdiff <- function(a, b) a + log1p(-exp(b - a))
nll <- function(d, family, mu, sigma) {
  exact <- d$from == d$to; survived <- is.infinite(d$to); left <- d$from == 0; between <- !exact & !survived & !left
  z1 <- (log(d$from) - mu) / sigma; z2 <- (log(d$to) - mu) / sigma
  normal <- family == "lognormal"
  ls <- function(z) if (normal) pnorm(z, lower.tail = FALSE, log.p = TRUE) else -exp(z)
  lf <- function(z) if (normal) pnorm(z, log.p = TRUE) else log(-expm1(-exp(z)))
  ld <- function(z) if (normal) dnorm(z, log = TRUE) else z - exp(z)
  v <- numeric(nrow(d))
  v[exact] <- ld(z1[exact]) - log(sigma) - log(d$from[exact]); v[survived] <- ls(z1[survived]); v[left] <- lf(z2[left])
  v[between] <- logdiff(ls(z1[between]), ls(z2[between]))
  -sum(d$count * v)
}
quantile0 <- function(family, p) if (family == "lognormal") qnorm(p) else log(-log1p(-p))
least <- function(f, around) { # minimum over ln sigma, from where a coarse grid is least
  grid <- around + seq(-4, 4, 0.1); v <- sapply(grid, f); v[!is.finite(v)] <- Inf; i <- which.min(v)
  o <- optimize(f, c(grid[max(1, i - 1)], grid[min(length(grid), i + 1)]), tol = 1e-9)
  o$objective
}
ends <- function(profile, estimate, step, best, confidence) {
  wanted <- qchisq(confidence, 1) / 2
  f <- function(q) profile(q) - best - wanted
  sapply(c(-1, 1), function(side) {
    far <- step
    while (f(estimate + side * far) < 0) { far <- far * 1.5; if (far > 300 * step) return(side * Inf) }
    uniroot(f, sort(c(estimate, estimate + side * far)), tol = 1e-11 * max(1, abs(estimate)))$root
  })
}
rows <- list()
for (name in names(sets)) for (family in c("weibull", "lognormal", "exponential")) {
  d <- sets[[name]]
  s <- Surv(ifelse(d$from == 0, NA, d$from), ifelse(is.infinite(d$to), NA, d$to), type = "interval2")
  stressed <- !is.na(d$x[1])
  form <- if (stressed) s ~ x else s ~ 1
  control <- survreg.control(maxiter = 500, rel.tolerance = 1e-13, toler.chol = 1e-14)
  fit <- survreg(form, data = d, weights = count, dist = family, control = control)
  v <- fit$var; p <- length(coef(fit)); free <- family != "exponential"
  out <- list(set = name, family = family, b0 = coef(fit)[1], b1 = if (stressed) coef(fit)[2] else NA, sigma = fit$scale, loglik = fit$loglik[length(fit$loglik)],
              v00 = v[1, 1], v01 = if (nrow(v) > 1) v[1, 2] else NA, v11 = if (nrow(v) > 1) v[2, 2] else NA, vss = if (free) v[p + 1, p + 1] else NA)
  mu <- coef(fit)[1]; sigma <- fit$scale; best <- -out$loglik
  bounds <- rep(NA, 10)
  if (stressed) {
    pr <- function(q) { d$o <- q * d$x; -tail(survreg(s ~ offset(o), data = d, weights = count, dist = family, control = control)$loglik, 1) }
    bounds[9:10] <- ends(pr, coef(fit)[2], sqrt(v[2, 2]), best, 0.9)
  } else {
    over <- function(f) if (free) least(f, log(sigma)) else f(0)
    k <- function(sg) if (family == "lognormal") sg^2 / 2 else lgamma(1 + sg)
    se <- sqrt(v[1, 1])
    if (!isTRUE(abs(nll(d, family, mu, sigma) - best) < 1e-8 * max(1, abs(best)))) { cat(name, family, nll(d, family, mu, sigma), best, mu, sigma, "\n") }
    z <- quantile0(family, 0.1)
    bounds[1:2] <- exp(ends(function(q) over(function(l) nll(d, family, q - exp(l) * z, exp(l))), mu + sigma * z, max(se, 0.1), best, 0.9))
    bounds[3:4] <- exp(ends(function(q) over(function(l) nll(d, family, q - k(exp(l)), exp(l))), mu + k(sigma), max(se, 0.1), best, 0.9))
    out$time <- signif(exp(mu + sigma * quantile0(family, 0.3)), 4)
    lt <- log(out$time)
    c2 <- ends(function(c) over(function(l) nll(d, family, lt - exp(l) * c, exp(l))), (lt - mu) / sigma, 0.3, best, 0.9)
    bounds[5:6] <- if (family == "lognormal") pnorm(rev(c2), lower.tail = FALSE) else exp(-exp(rev(c2)))
    if (free) bounds[7:8] <- exp(ends(function(l) optimize(function(m) nll(d, family, m, exp(l)), mu + c(-8, 8) * max(sigma, se), tol = 1e-9)$objective,
                                      log(sigma), sqrt(v[p + 1, p + 1]), best, 0.9))
  }
  if (is.null(out$time)) out$time <- NA
  names(bounds) <- c("l10low", "l10high", "meanlow", "meanhigh", "survlow", "survhigh", "sigmalow", "sigmahigh", "b1low", "b1high")
  rows[[length(rows) + 1]] <- as.data.frame(c(out, as.list(bounds)))
}
golden <- do.call(rbind, rows)
header <- "# Made by lifefit.R beside this file: R 4.2.2, survival 3.5-3 (survreg); likelihood-ratio bounds two-sided 90 %, by profile in R."
put <- function(frame, file) {
  con <- file(file, "w"); writeLines(header, con)
  for (j in seq_along(frame)) if (is.numeric(frame[[j]])) frame[[j]] <- ifelse(is.na(frame[[j]]), "", formatC(frame[[j]], digits = 12, format = "g", width = 1))
  write.csv(frame, con, row.names = FALSE, quote = FALSE); close(con)
}
put(data, "lifefit-data.csv"); put(golden, "lifefit-golden.csv")
cat(length(sets), "sets\n")
