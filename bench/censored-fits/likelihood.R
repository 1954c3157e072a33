# Fits the lognormal likelihood of every set of censored results in a file, and times the fits alone.
# Usage: Rscript likelihood.R <file>; one line a set: low1,high1,low2,high2,... (high of an exact result
# equals its low). Prints the processor seconds of all fits by
# survreg and by its inner survreg.fit, then mean and sd of the logarithm of each.
suppressPackageStartupMessages(library(survival))
lines <- readLines(commandArgs(trailingOnly = TRUE)[1])
sets <- lapply(strsplit(lines, ","), function(cells) {
  ends <- matrix(as.numeric(cells), nrow = 2)
  # interval2 takes a missing lower end for "below".
  list(low = ifelse(ends[1, ] == 0, NA, ends[1, ]), high = ends[2, ])
})
fits <- vector("list", length(sets))
began <- proc.time()
for (i in seq_along(sets)) {
  s <- sets[[i]]
  fit <- survreg(Surv(s$low, s$high, type = "interval2") ~ 1, dist = "lognormal")
  fits[[i]] <- c(unname(fit$coefficients), fit$scale)
}
spent <- proc.time() - began
# The same without the formula interface: the inner function, on ready-made matrices.
control <- survreg.control()
inner <- lapply(sets, function(s) {
  y <- Surv(s$low, s$high, type = "interval2")
  logs <- cbind(suppressWarnings(log(y[, 1])), ifelse(y[, 3] == 3, log(y[, 2]), 1), y[, 3])
  list(x = matrix(1, length(s$low), 1), y = logs)
})
began <- proc.time()
for (i in seq_along(inner)) {
  fit <- survreg.fit(inner[[i]]$x, inner[[i]]$y, NULL, NULL, NULL, control,
                     survreg.distributions$gaussian, 0, 1, rep(1, nrow(inner[[i]]$x)), NULL)
}
bare <- proc.time() - began
cat(sprintf("%.6f %.6f %s %s\n", spent[["user.self"]] + spent[["sys.self"]],
            bare[["user.self"]] + bare[["sys.self"]],
            paste(R.version$major, R.version$minor, sep = "."),
            as.character(packageVersion("survival"))))
cat(vapply(fits, function(f) sprintf("%.17g %.17g", f[1], f[2]), ""), sep = "\n")
