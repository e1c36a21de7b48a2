"""The checks: findings, the registry of rules, the runner; one rule a file in rules/."""
