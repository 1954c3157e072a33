# Writes fixture.json: most probable numbers of every outcome of five sets of tubes, with exact limits,
# by uniroot on the score and on sums of binomial probabilities; nothing of this project is used.
#
# Run in this folder:  Rscript generate.R
# Made with R 4.2.2, base only; the version that made the file is written into it. No random numbers.
number <- function(v) vapply(v, function(z) {
  if (is.infinite(z)) "\"Infinity\"" else if (is.na(z)) "null" else sprintf("%.17g", z)
}, "")
list_of <- function(v) paste0("[", paste(number(v), collapse = ", "), "]")
root <- function(f) exp(uniroot(function(l) f(exp(l)), c(-40, 40), tol = 1e-14, maxiter = 10000)$root)

estimate <- function(x, n, v) {
  if (sum(x) == 0) return(0)
  if (all(x == n)) return(Inf)
  root(function(rate) sum(ifelse(x == 0, 0, x * v / expm1(rate * v))) - sum((n - x) * v))
}
limits <- function(seen, all, n, v, miss) {
  e <- apply(all, 1, estimate, n = n, v = v)
  own <- estimate(seen, n, v)
  same <- if (is.infinite(own)) is.infinite(e) else abs(e - own) <= 1e-9 * own
  chance <- function(rows, rate) sum(apply(all[rows, , drop = FALSE], 1, function(x)
    prod(dbinom(x, n, -expm1(-rate * v)))))
  up <- which(e > own | same); down <- which(e < own | same)
  c(if (own == 0) 0 else root(function(rate) chance(up, rate) - miss),
    if (is.infinite(own)) Inf else root(function(rate) miss - chance(down, rate)))
}
designs <- list(
  list(v = c(10, 1, 0.1), n = c(3, 3, 3), conf = 0.95),
  list(v = c(100, 10), n = c(1, 5), conf = 0.95),
  list(v = 10, n = 10, conf = 0.9),
  list(v = c(50, 10, 1), n = c(1, 4, 2), conf = 0.99),
  list(v = 1.96, n = 51, conf = 0.95))
rows <- unlist(lapply(designs, function(d) {
  all <- as.matrix(expand.grid(lapply(d$n, function(k) 0:k)))
  apply(all, 1, function(x) {
    e <- estimate(x, d$n, d$v); l <- limits(x, all, d$n, d$v, (1 - d$conf) / 2)
    sprintf("  {\"volumes\": %s, \"tubes\": %s, \"positive\": %s, \"confidence\": %s, \"estimate\": %s, \"low\": %s, \"high\": %s}",
      list_of(d$v), list_of(d$n), list_of(x), d$conf, number(e), number(l[1]), number(l[2]))
  })
}))
writeLines(c("{", " \"made_by\": \"generate.R\",",
  sprintf(" \"r\": \"%s\",", paste(R.version$major, R.version$minor, sep = ".")),
  " \"rows\": [", paste(rows, collapse = ",\n"), " ]", "}"), "fixture.json")
