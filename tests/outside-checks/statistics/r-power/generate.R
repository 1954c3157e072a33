# Power and size of the two-sample t test, for fixture.json. Run: Rscript generate.R > fixture.json
options(digits = 17)
number <- function(x) format(x, digits = 15)
levels <- c(0.1, 0.05, 0.01, 0.0005)
powers <- c(); sizes <- c()
for (level in levels) for (ratio in c(0.2, 0.5, 1, 1.5, 3, 6)) {
  for (n in c(2, 3, 5, 12, 40, 300)) {
    p <- power.t.test(n = n, delta = ratio, sd = 1, sig.level = level)$power
    powers <- c(powers, sprintf('    {"n": %d, "difference": %s, "level": %s, "power": %s}',
      n, number(ratio), number(level), number(p)))
  }
}
for (level in levels) for (ratio in c(0.2, 0.5, 1, 1.5, 3)) for (power in c(0.5, 0.8, 0.95)) {
  n <- tryCatch(power.t.test(delta = ratio, sd = 1, sig.level = level, power = power)$n,
    error = function(e) NA)
  if (is.na(n)) next
  sizes <- c(sizes, sprintf('    {"difference": %s, "level": %s, "power": %s, "n": %s}',
    number(ratio), number(level), number(power), number(n)))
}
cat('{\n  "r": "', R.version.string, '",\n  "powers": [\n', sep = '')
cat(paste(powers, collapse = ',\n'), '\n  ],\n  "sizes": [\n', sep = '')
cat(paste(sizes, collapse = ',\n'), '\n  ]\n}\n', sep = '')
