"""The scoring core on data it was not made for, against scikit-learn and plain methods.

Iris: R. A. Fisher, The use of multiple measurements in taxonomic problems, Annals of Eugenics 7 (1936), as shipped
with scikit-learn. Penguins: K. B. Gorman, T. D. Williams and W. R. Fraser, PLoS ONE 9(3) e90081 (2014), as shipped in
the package palmerpenguins. The classifiers compared with are scikit-learn's, run here.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
import pytest

from assistant.model.knowledge import KnowledgeBase, MemoryStore
from assistant.model.records import Statement
from assistant.model.schema import BY_NAME, empty
from assistant.reasoning import identify as core
from assistant.reasoning.evidence import fitted
from assistant.reasoning.observed import Evidence, Observation
from assistant.reasoning.tables import Table, compile_table

NEAREST_MEAN = {"iris": 128, "penguins": 332}
"""Right in leave-one-out with scaled features by the nearest class mean (computed beforehand; a floor to beat)."""
STRICT_UNIQUE = {"iris": 112, "penguins": 277}
"""Left as the only class, and rightly, when a class is thrown out as soon as one measurement leaves its range."""


def row(kind_name: str, key: str, **values: object) -> list[object]:
    """A row of a kind with most fields empty."""
    return [key, *(values.get(f.name, empty(f)) for f in BY_NAME[kind_name].fields)]


def base_of(names: Sequence[str], features: Sequence[str], kind: str,
            statements: Mapping[str, list[list[object]]] | None = None, states: int = 0) -> KnowledgeBase:
    """A base of some classes and features, every observer exact."""
    characters = {f: row("character", f, kind=kind, label=f, look="glance", error=0.0, use="identify", question="?")
                  for f in features}
    found = {f: [row("state", f"{f}.{n}", character=f, label=str(n)) for n in range(states)] for f in features}
    shared = {"taxon": {n: row("taxon", n, scientific=n, rank="species", label=n) for n in names},
              "character": characters, "list": {"species": list(names)}}
    return KnowledgeBase(MemoryStore(shared, {"state": found, "statement": dict(statements or {})}, "test"))


def data_of(name: str) -> tuple[np.ndarray, np.ndarray, list[str]]:
    """Measurements as whole numbers, classes, names of the features."""
    if name == "iris":
        from sklearn.datasets import load_iris

        found = load_iris()
        return np.rint(found.data * 10), found.target, ["sepal-length", "sepal-width", "petal-length", "petal-width"]
    import palmerpenguins

    frame = palmerpenguins.load_penguins()
    columns = ["bill_length_mm", "bill_depth_mm", "flipper_length_mm", "body_mass_g"]
    frame = frame.dropna(subset=columns)
    numbers = frame[columns].to_numpy() * np.array([10.0, 10.0, 1.0, 0.1])
    kinds = frame["species"].astype("category").cat.codes.to_numpy()
    return np.rint(numbers), kinds, [c.replace("_", "-") for c in columns]


def statement(taxon: str, feature: str, values: np.ndarray) -> list[object]:
    """What a curator would write of some counts: extreme and usual range."""
    low, usual_low, usual_high, high = (float(x) for x in np.percentile(values, [0, 6, 94, 100]))
    return row("statement", f"{taxon}.{feature}", taxon=taxon, character=feature, low=low, usual_low=round(usual_low),
               usual_high=round(usual_high), high=high, basis="read", frequency="")


def chances(mean: float, sd: float) -> Mapping[int, float]:
    """How often the core expects each count, given a mean and a spread."""
    return fitted(Statement(*row("statement", "x", mean=mean, sd=sd)), 0.9)


def log_of(told: Mapping[int, float], count: float) -> float:
    """The log of the chance of a count; far off, the least that is told."""
    return math.log(max(told.get(int(count), 0.0), 1e-12))


@pytest.mark.parametrize("name", ["iris", "penguins"])
def test_mean_and_spread_give_gaussian_naive_bayes(name: str) -> None:
    """From means and spreads the core's counts give the posterior of scikit-learn's GaussianNB."""
    from sklearn.naive_bayes import GaussianNB

    numbers, classes, _ = data_of(name)
    model = GaussianNB(priors=np.full(3, 1 / 3), var_smoothing=0.0).fit(numbers, classes)
    told = {(k, f): chances(model.theta_[k, f], math.sqrt(model.var_[k, f])) for k in range(3) for f in range(4)}
    for line, expected in zip(numbers[::5], model.predict_proba(numbers[::5]), strict=True):
        logs = np.array([sum(log_of(told[k, f], line[f]) for f in range(4)) for k in range(3)])
        found = np.exp(logs - logs.max())
        assert np.allclose(found / found.sum(), expected, atol=0.02)


@pytest.mark.parametrize("name", ["iris", "penguins"])
def test_leaving_one_out_names_as_many_as_plain_methods(name: str) -> None:
    """Left out one by one, specimens are named no less often than by the nearest class mean."""
    numbers, classes, _ = data_of(name)
    whole = {(k, f): chances(numbers[classes == k, f].mean(), numbers[classes == k, f].std())
             for k in range(3) for f in range(4)}
    right = 0
    for out, (line, kind) in enumerate(zip(numbers, classes, strict=True)):
        own = (classes == kind) & (np.arange(len(classes)) != out)
        told = whole | {(kind, f): chances(numbers[own, f].mean(), numbers[own, f].std()) for f in range(4)}
        common = [math.log((classes == k).sum() - (k == kind)) for k in range(3)]
        scores = [common[k] + sum(log_of(told[k, f], line[f]) for f in range(4)) for k in range(3)]
        right += int(np.argmax(scores)) == kind
    assert right >= NEAREST_MEAN[name]


@pytest.mark.parametrize("name", ["iris", "penguins"])
def test_ranges_alone_lose_few(name: str) -> None:
    """Compiled from extreme and usual ranges only, the core names far more than strict ranges keep."""
    numbers, classes, features = data_of(name)
    names = [f"class-{k}" for k in np.unique(classes)]
    told = {n: [statement(n, f, numbers[classes == k, i]) for i, f in enumerate(features)] for k, n in enumerate(names)}
    kb = base_of(names, features, "count", told)
    table = compile_table(kb)
    right = 0
    for values, k in zip(numbers, classes, strict=True):
        seen = tuple(Observation(f, value=float(v)) for f, v in zip(features, values, strict=True))
        right += int(core.posterior(kb, table, Evidence(seen)).argmax()) == k
    assert right > STRICT_UNIQUE[name]
    assert right >= 0.9 * len(classes)


def test_the_posterior_is_that_of_categorical_naive_bayes(monkeypatch: pytest.MonkeyPatch) -> None:
    """With the same chances and none of our allowances for careless readers, the posterior is scikit-learn's."""
    from sklearn.naive_bayes import CategoricalNB

    numbers, classes, features = data_of("iris")
    binned = np.stack([np.digitize(c, np.percentile(c, [25, 50, 75])) for c in numbers.T], axis=1)
    model = CategoricalNB(fit_prior=False).fit(binned, classes)
    names = [f"class-{k}" for k in model.classes_]
    kb = base_of(names, features, "states", states=4)
    told = {n: [statement(n, f, numbers[:, i]) for i, f in enumerate(features)] for n in names}
    plain = compile_table(base_of(names, features, "count", told))
    report = np.concatenate([np.exp(p).T for p in model.feature_log_prob_]).astype(np.float32)
    columns = tuple(f"{f}.{n}" for f in features for n in range(4))
    table = Table(tuple(names), columns, {f: (4 * i, 4 * i + 4) for i, f in enumerate(features)}, report,
                  np.ones((4, 3), bool), {n: i for i, n in enumerate(names)}, plain.standing, np.ones(4))
    for constant, value in (("READING", 0.0), ("FLOOR", 0.0), ("ANSWERED", 1.0)):
        monkeypatch.setattr(core, constant, value)
    for line, expected in zip(binned[::7], model.predict_proba(binned[::7]), strict=True):
        seen = tuple(Observation(f, (f"{f}.{n}",)) for f, n in zip(features, line, strict=True))
        assert np.allclose(core.posterior(kb, table, Evidence(seen)), expected, atol=1e-5)
