# Writes fixture.json: 200 generated sets of left-, interval- and right-censored results, each with
# the Kaplan-Meier distribution (survfit on the turned-over scale) and the lognormal likelihood fit
# (survreg, interval2) of R's survival package.
#
# Run in this folder:  Rscript generate.R
# Made with R 4.2.2 and survival 3.5-3; the versions that made the file are written into it.
# The numbers are invented by the generator below; they describe nothing real.
suppressPackageStartupMessages(library(survival))
RNGversion("4.2.2")
SEED <- 20260
set.seed(SEED)
SETS <- 200
PROBABILITIES <- c(0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95)

# One set: lognormal values, a reporting limit drawn per result, a detection limit below it.
draw <- function(id) {
  repeat {
    n <- sample(12:40, 1)
    meanlog <- runif(1, -3, 5)
    sdlog <- runif(1, 0.3, 2)
    x <- rlnorm(n, meanlog, sdlog)
    kind <- c("none", "one", "several", "several", "several", "open")[sample(6, 1)]
    # Two digits now and then, so that ties and values equal to a limit occur.
    x <- signif(x, sample(2:4, 1))
    low <- high <- x
    if (kind != "none") {
      count <- if (kind == "one") 1 else sample(2:4, 1)
      reporting <- signif(qlnorm(runif(count, 0.05, 0.75), meanlog, sdlog), 2)
      rl <- reporting[sample(count, n, replace = TRUE)]
      mdl <- signif(rl / sample(c(2, 3, 5), 1), 2)
      trace <- x >= mdl & x < rl
      below <- x < mdl
      low[trace] <- mdl[trace]; high[trace] <- rl[trace]
      low[below] <- 0; high[below] <- mdl[below]
    }
    if (kind == "open") {
      over <- signif(qlnorm(0.93, meanlog, sdlog), 2)
      above <- low == high & x > over
      low[above] <- over; high[above] <- Inf
    }
    exact <- low == high
    if (sum(exact) >= 3 && length(unique(x[exact])) >= 2) break
  }
  list(id = id, low = low, high = high)
}

# The scale is turned over about a constant; an open-ended result is below infinity and says nothing.
kaplan_meier <- function(low, high) {
  used <- is.finite(high)
  x <- high[used]
  detected <- low[used] == high[used]
  top <- max(x)
  fit <- survfit(Surv(top - x, detected) ~ 1, timefix = FALSE)
  at <- fit$n.event > 0
  values <- top - fit$time[at]
  mass <- -diff(c(1, fit$surv[at]))
  leftover <- min(fit$surv)
  zero <- sum(values * mass)
  rmean <- top - unname(summary(fit, rmean = "individual")$table["rmean"])
  sd <- sqrt(sum(mass * (values - rmean)^2) + leftover * (min(x) - rmean)^2)
  q <- top - as.numeric(quantile(fit, 1 - PROBABILITIES, conf.int = FALSE))
  list(leftover = leftover, zero = zero, lowest = rmean,
       smallest_detect = zero + leftover * min(x[detected]), sd = sd, quantiles = q)
}

likelihood <- function(low, high) {
  left <- ifelse(low == 0, NA, low)
  right <- ifelse(is.finite(high), high, NA)
  fit <- survreg(Surv(left, right, type = "interval2") ~ 1, dist = "lognormal",
                 control = survreg.control(rel.tolerance = 1e-14, maxiter = 500))
  m <- unname(coef(fit)); s <- fit$scale
  mean <- exp(m + s^2 / 2)
  list(meanlog = m, sdlog = s, median = exp(m), mean = mean, sd = mean * sqrt(exp(s^2) - 1),
       quantiles = exp(m + s * qnorm(PROBABILITIES)))
}

number <- function(v) vapply(v, function(z) {
  if (is.na(z)) "null" else if (is.infinite(z)) "\"Infinity\"" else sprintf("%.15g", z)
}, "")
list_of <- function(v) paste0("[", paste(number(v), collapse = ","), "]")
object <- function(l) {
  text <- vapply(l, function(v) if (length(v) == 1) number(v) else list_of(v), "")
  paste0("{", paste(sprintf("\"%s\":%s", names(l), text), collapse = ","), "}")
}

lines <- vapply(seq_len(SETS), function(id) {
  set <- draw(id)
  sprintf("{\"id\":%d,\"low\":%s,\"high\":%s,\"km\":%s,\"mle\":%s}", id,
          list_of(set$low), list_of(set$high),
          object(kaplan_meier(set$low, set$high)), object(likelihood(set$low, set$high)))
}, "")
header <- sprintf("{\"made_by\":\"generate.R\",\"r\":\"%s\",\"survival\":\"%s\",\"seed\":%d,\"probabilities\":%s,\"sets\":[",
                  paste(R.version$major, R.version$minor, sep = "."), packageVersion("survival"), SEED,
                  list_of(PROBABILITIES))
writeLines(c(header, paste0(lines, c(rep(",", SETS - 1), "")), "]}"), "fixture.json")
