# Makes survival-data.csv, survival-steps.csv: non-parametric survival. Censored on the right only: survival::survfit, Greenwood, log-log bounds of
# 90 %. Else: survival::survfit (Turnbull; it stops at changes of 5e-5) and, independent of it, self-consistency run here until nothing
# changes, then sharpened by constrained Newton steps on the places that keep a share (column "sharp").
# Run: Rscript survival.R   (R 4.2.2, survival 3.5-3), in this folder.
suppressMessages(library(survival))
set.seed(20240922)

sets <- list()
add <- function(name, from, to, count = rep(1, length(from))) {
  sets[[name]] <<- data.frame(set = name, from = from, to = to, count = count)
}
right <- function(t, c) { c <- rep_len(c, length(t)); list(from = pmin(t, c), to = ifelse(t <= c, t, Inf)) }
addright <- function(name, t, c) { d <- right(signif(t, 5), signif(c, 5)); add(name, d$from, d$to) }
looks <- function(name, t, at) { k <- findInterval(t, c(0, at), left.open = TRUE); add(name, c(0, at)[k], c(at, Inf)[k]) }

f <- c(54, 187, 216, 240, 244, 335, 361, 373, 375, 386)
add("handbook", c(f, 500), c(f, Inf), c(rep(1, 10), 10))
add("mixed7", c(31, 39, 57, 65, 70, 105, 110), c(31, 39, 57, Inf, 70, Inf, 110))
add("ovarian", ovarian$futime, ifelse(ovarian$fustat == 1, ovarian$futime, Inf))
add("lung", lung$time, ifelse(lung$status == 2, lung$time, Inf))
add("aml", aml$time, ifelse(aml$status == 1, aml$time, Inf))
add("tied", c(5, 5, 5, 7, 7, 9, 9), c(5, 5, Inf, 7, Inf, 9, 9), c(2, 1, 3, 2, 2, 1, 1))
addright("ended", rweibull(40, 2, 1000), 900)
addright("removed", rlnorm(60, 7, 0.8), runif(60, 300, 3000))

looks("looks12", rweibull(12, 2, 1000), seq(200, 1600, 200))
looks("looks60", rweibull(60, 2, 1000), seq(250, 1500, 250))
for (n in c(15, 50)) { at <- signif(runif(n, 200, 2000), 5); t <- rlnorm(n, log(900), 0.7)
  add(paste0("once", n), ifelse(t < at, 0, at), ifelse(t < at, at, Inf)) }
for (n in c(10, 40, 120)) { t <- rweibull(n, 2, 1000); step <- runif(n, 100, 500); k <- floor(t / step)
  gone <- runif(n) < 0.2
  add(paste0("own", n), signif(k * step, 5), ifelse(gone, Inf, signif((k + 1) * step, 5))) }
for (n in c(9, 25, 80)) { t <- signif(rweibull(n, 1.5, 5000), 5); kind <- rep_len(c("exact", "right", "left", "between"), n)
  add(paste0("some", n), ifelse(kind == "exact", t, ifelse(kind == "left", 0, signif(0.8 * t, 5))),
      ifelse(kind == "exact", t, ifelse(kind == "right", Inf, signif(1.3 * t, 5)))) }
breast <- matrix(c(45,Inf, 6,10, 0,7, 46,Inf, 46,Inf, 7,16, 17,Inf, 7,14, 37,44, 0,8, 4,11, 15,Inf, 11,15, 22,Inf, 46,Inf, 46,Inf, 25,37, 46,Inf, 26,40,
  46,Inf, 27,34, 36,44, 46,Inf, 36,48, 37,Inf, 40,Inf, 17,25, 46,Inf, 11,18, 38,Inf, 5,12, 37,Inf, 0,5, 18,Inf, 24,Inf, 36,Inf, 5,11, 19,35, 17,25, 24,Inf,
  32,Inf, 33,Inf, 19,26, 37,Inf, 34,Inf, 36,Inf), ncol = 2, byrow = TRUE)
add("breast", breast[, 1], breast[, 2])

# The likeliest shares at every elementary place, by self-consistency; a place is (left, right] or a moment.
sharp <- function(d) {
  cuts <- sort(unique(c(0, d$from, d$to)))
  exact <- d$from == d$to
  # Moments {t} and open gaps between neighbouring cuts.
  lo <- c(cuts, head(cuts, -1)); hi <- c(cuts, cuts[-1]); moment <- rep(c(TRUE, FALSE), c(length(cuts), length(cuts) - 1))
  A <- sapply(seq_along(lo), function(j) ifelse(exact, moment[j] & lo[j] == d$from,
    if (moment[j]) lo[j] > d$from & lo[j] <= d$to & is.finite(lo[j]) else lo[j] >= d$from & hi[j] <= d$to)) * 1
  # Gaps and moments that say the same are one place: keep the first.
  ok <- colSums(A) > 0 & !duplicated(t(A)); A <- A[, ok, drop = FALSE]; lo <- lo[ok]; hi <- hi[ok]
  # Places that lie in fewer observations than another cannot win: keep only those not contained in another.
  m <- ncol(A); keep <- sapply(1:m, function(j) !any(sapply(1:m, function(k) k != j && all(A[, k] >= A[, j]))))
  A <- A[, keep, drop = FALSE]; lo <- lo[keep]; hi <- hi[keep]
  w <- d$count; n <- sum(w); p <- rep(1 / ncol(A), ncol(A))
  for (i in 1:20000) p <- p * as.vector(crossprod(A, w / (A %*% p))) / n
  S <- which(p > 1e-6)
  repeat {
    B <- A[, S, drop = FALSE]; q <- p[S] / sum(p[S])
    for (i in 1:60) {
      P <- as.vector(B %*% q); g <- as.vector(crossprod(B, w / P)); H <- crossprod(B * (sqrt(w) / P)); k <- length(S)
      s <- solve(rbind(cbind(H + diag(1e-12, k), 1), c(rep(1, k), 0)), c(g, 0))[1:k]
      a <- 1; while (any(q + a * s < 0) && a > 1e-8) a <- a / 2
      q <- q + a * s
    }
    p[] <- 0; p[S] <- q
    if (min(q) > 1e-7) break
    S <- S[q > 1e-7]
  }
  gain <- as.vector(crossprod(A, w / (A %*% p))) / n
  stopifnot(max(gain) < 1 + 1e-9)
  function(t) { # survival at a time that is not within a place
    1 - sum(p[hi <= t])
  }
}

data <- do.call(rbind, sets)
con <- file("survival-data.csv", "w")
head <- "# Made by survival.R beside this file: R 4.2.2, survival 3.5-3 (survfit)."
writeLines(head, con); write.table(data, con, sep = ",", quote = FALSE, row.names = FALSE); close(con)
con <- file("survival-steps.csv", "w")
writeLines(c(head, "set,kind,time,survfit,sharp,se,low,high"), con)
for (name in names(sets)) {
  d <- sets[[name]]
  if (all(d$from == d$to | is.infinite(d$to))) {
    fit <- survfit(Surv(d$from, is.finite(d$to)) ~ 1, weights = d$count, conf.type = "log-log", conf.int = 0.9, robust = FALSE)
    k <- fit$n.event > 0
    out <- data.frame(name, "exact", fit$time[k], fit$surv[k], fit$surv[k], fit$surv[k] * fit$std.err[k], fit$lower[k], fit$upper[k])
  } else {
    fit <- survfit(Surv(ifelse(d$from == 0 & d$from != d$to, NA, d$from), ifelse(is.infinite(d$to), NA, d$to), type = "interval2") ~ 1, weights = d$count)
    at <- sort(unique(d$to[is.finite(d$to)])); S <- sharp(d)
    of <- sapply(at, function(t) c(1, fit$surv)[1 + findInterval(t, fit$time)])
    out <- data.frame(name, "between", at, of, sapply(at, S), NA, NA, NA)
  }
  out[4:8] <- lapply(out[4:8], function(v) ifelse(is.na(v), "", formatC(as.numeric(v), digits = 12, format = "g")))
  write.table(out, con, sep = ",", quote = FALSE, row.names = FALSE, col.names = FALSE)
}
close(con)
