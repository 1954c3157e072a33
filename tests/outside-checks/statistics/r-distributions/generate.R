# Writes fixture.json: values of R's own distribution functions, exact tests, p-value adjustment and
# weighted least squares, at chosen arguments far into both tails.
#
# Run in this folder:  Rscript generate.R
# Made with R 4.2.2; the version that made the file is written into it. No random numbers.
number <- function(v) vapply(v, function(z) {
  if (is.infinite(z)) sprintf("\"%sInfinity\"", if (z < 0) "-" else "") else sprintf("%.17g", z)
}, "")
rows <- function(...) {
  columns <- lapply(list(...), number)
  paste0("[\n", paste0("  [", do.call(paste, c(columns, sep = ", ")), "]", collapse = ",\n"), "\n ]")
}
list_of <- function(v) paste0("[", paste(number(v), collapse = ", "), "]")

z <- c(-37, -30, -12.5, -8, -5.7, -4, -2, -1, -0.5, -0.1, 0, 1e-8, 0.3, 0.6, 1.96, 3, 5, 7, 9)
p <- c(1e-300, 1e-100, 1e-30, 1e-15, 1e-8, 1e-4, 0.02425, 0.075, 0.3, 0.5, 0.6, 0.925, 0.99, 1 - 1e-9)
t_grid <- expand.grid(t = c(-200, -12, -3, -0.7, -1e-6, 0.2, 1.5, 4, 30), df = c(0.7, 1, 2.5, 6, 16.7, 120, 4321.5))
t_p <- expand.grid(p = c(1e-12, 1e-5, 0.01, 0.2, 0.4, 0.5001, 0.6, 0.9, 0.999, 0.9999999), df = c(0.7, 1, 2, 3.3, 6, 27.5, 400, 1e5))
g_grid <- expand.grid(x = c(1e-8, 0.01, 0.8, 3, 9.5, 40, 150), shape = c(0.3, 0.5, 1, 4, 12.5, 100))
c_p <- expand.grid(p = c(1e-10, 1e-3, 0.05, 0.5, 0.9, 0.9999, 1 - 1e-12), df = c(0.5, 1, 2, 5, 22, 300))
b_grid <- expand.grid(x = c(1e-6, 0.03, 0.3, 0.5, 0.77, 0.999), a = c(0.5, 1, 3, 17.5, 200), b = c(0.5, 2, 40))
n_grid <- expand.grid(k = c(0, 1, 7, 20, 33, 60), n = c(60, 250), chance = c(0.02, 1 / 3, 0.9))
counts <- c(0, 1, 2, 5, 10, 37, 200, 5000)
garwood <- sapply(counts, function(k) poisson.test(k, conf.level = 0.95)$conf.int)
clopper <- expand.grid(k = c(0, 1, 5, 12), n = c(12, 40))
one_sided <- mapply(function(k, n) c(binom.test(k, n, alternative = "greater")$conf.int[1],
                                     binom.test(k, n, alternative = "less")$conf.int[2]), clopper$k, clopper$n)
raw <- c(0.001, 0.21, 0.04, 0.04, 0.6, 0.013, 1, 0.0004, 0.05, 0.049)
x <- c(0.5, 1, 2, 4, 8, 9); y <- c(1.1, 1.4, 3.1, 4.4, 9.7, 9.9); w <- c(4, 3, 3, 1, 0.5, 2)
line <- summary(lm(y ~ x, weights = w))

writeLines(c("{",
  sprintf(" \"made_by\": \"generate.R\", \"r\": \"%s\",", paste(R.version$major, R.version$minor, sep = ".")),
  sprintf(" \"normalCdf\": %s,", rows(z, pnorm(z))),
  sprintf(" \"normalUpperTail\": %s,", rows(-z, pnorm(-z, lower.tail = FALSE))),
  sprintf(" \"normalQuantile\": %s,", rows(p, qnorm(p))),
  sprintf(" \"studentTCdf\": %s,", rows(t_grid$t, t_grid$df, pt(t_grid$t, t_grid$df))),
  sprintf(" \"studentTQuantile\": %s,", rows(t_p$p, t_p$df, qt(t_p$p, t_p$df))),
  sprintf(" \"incompleteGamma\": %s,", rows(g_grid$x, g_grid$shape, pgamma(g_grid$x, g_grid$shape), pgamma(g_grid$x, g_grid$shape, lower.tail = FALSE))),
  sprintf(" \"chiSquareQuantile\": %s,", rows(c_p$p, c_p$df, qchisq(c_p$p, c_p$df))),
  sprintf(" \"incompleteBeta\": %s,", rows(b_grid$x, b_grid$a, b_grid$b, pbeta(b_grid$x, b_grid$a, b_grid$b))),
  sprintf(" \"binomialTails\": %s,", rows(n_grid$n, n_grid$k, n_grid$chance, pbinom(n_grid$k, n_grid$n, n_grid$chance), pbinom(n_grid$k - 1, n_grid$n, n_grid$chance, lower.tail = FALSE))),
  sprintf(" \"binomialLimits\": %s,", rows(clopper$n, clopper$k, one_sided[1, ], one_sided[2, ])),
  sprintf(" \"poissonLimits\": %s,", rows(counts, garwood[1, ], garwood[2, ])),
  sprintf(" \"benjaminiHochberg\": {\"raw\": %s, \"adjusted\": %s},", list_of(raw), list_of(p.adjust(raw, "BH"))),
  sprintf(" \"leastSquares\": {\"x\": %s, \"y\": %s, \"weights\": %s,", list_of(x), list_of(y), list_of(w)),
  sprintf("  \"intercept\": %s, \"slope\": %s, \"uIntercept\": %s, \"uSlope\": %s, \"residualSd\": %s, \"covariance\": %s}",
          number(line$coefficients[1, 1]), number(line$coefficients[2, 1]), number(line$coefficients[1, 2]),
          number(line$coefficients[2, 2]), number(line$sigma), number(line$sigma^2 * line$cov.unscaled[1, 2])),
  "}"), "fixture.json")
