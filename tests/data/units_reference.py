#!/usr/bin/env python3
"""Writes units_reference.csv: typed quantities and their SI values by an independent library.

Needs Debian's python3-pint. Decimals, not floats, so that every digit written is exact or right to 40 digits:
  python3 tests/data/units_reference.py > tests/data/units_reference.csv
"""

import decimal
from decimal import Decimal

import pint

decimal.getcontext().prec = 45
units = pint.UnitRegistry(non_int_type=Decimal)

# kind: (SI unit, {our spelling: the same unit in the library's names})
KINDS = {
    "length": ("meter", {
        "mm": "millimeter", "in": "inch", "µm": "micrometer", "thou": "thou", "m": "meter", "ft": "foot",
        "cm": "centimeter", "nm": "nanometer", "µin": "microinch"}),
    "area": ("meter**2", {
        "mm²": "millimeter**2", "in²": "inch**2", "cm²": "centimeter**2", "m²": "meter**2", "ft²": "foot**2"}),
    "angle": ("radian", {
        "°": "degree", "′": "arcminute", "″": "arcsecond", "rad": "radian", "mrad": "milliradian"}),
    "mass": ("kilogram", {"kg": "kilogram", "lb": "pound", "g": "gram", "oz": "ounce", "t": "metric_ton"}),
    "time": ("second", {"min": "minute", "h": "hour", "s": "second", "ms": "millisecond", "d": "day"}),
    "force": ("newton", {
        "N": "newton", "lbf": "force_pound", "kN": "kilonewton", "kgf": "force_kilogram", "US tonf": "force_ton",
        "UK tonf": "force_long_ton"}),
    "torque": ("newton*meter", {
        "N·m": "newton*meter", "ft·lb": "foot*force_pound", "in·lb": "inch*force_pound", "kN·m": "kilonewton*meter",
        "N·mm": "newton*millimeter", "kgf·m": "force_kilogram*meter"}),
    "pressure": ("pascal", {
        "MPa": "megapascal", "psi": "psi", "bar": "bar", "kPa": "kilopascal", "GPa": "gigapascal", "Pa": "pascal",
        "ksi": "ksi"}),
    "temperature": ("kelvin", {"°C": "degree_Celsius", "°F": "degree_Fahrenheit", "K": "kelvin"}),
    "temperature_rise": ("kelvin", {
        "K": "kelvin", "°F": "delta_degree_Fahrenheit", "°C": "delta_degree_Celsius"}),
    "angular_speed": ("radian/second", {
        "r/min": "revolution/minute", "rad/s": "radian/second", "r/s": "revolution/second", "°/s": "degree/second"}),
    "frequency": ("1/second", {"Hz": "hertz", "kHz": "kilohertz"}),
    "speed": ("meter/second", {
        "m/s": "meter/second", "km/h": "kilometer/hour", "mph": "mile/hour", "ft/s": "foot/second",
        "mm/s": "millimeter/second", "in/s": "inch/second", "m/min": "meter/minute", "ft/min": "foot/minute"}),
    "acceleration": ("meter/second**2", {
        "m/s²": "meter/second**2", "ft/s²": "foot/second**2", "g": "standard_gravity"}),
    "inertia": ("kilogram*meter**2", {
        "kg·m²": "kilogram*meter**2", "lb·ft²": "pound*foot**2", "lb·in²": "pound*inch**2",
        "kg·cm²": "kilogram*centimeter**2", "kg·mm²": "kilogram*millimeter**2"}),
    "unbalance": ("kilogram*meter", {
        "g·mm": "gram*millimeter", "kg·m": "kilogram*meter", "oz·in": "ounce*inch", "kg·mm": "kilogram*millimeter",
        "lb·in": "pound*inch"}),
    "expansion": ("1/kelvin", {
        "µm/(m·K)": "micrometer/meter/kelvin", "µin/(in·°F)": "microinch/inch/delta_degree_Fahrenheit",
        "/K": "1/kelvin", "/°F": "1/delta_degree_Fahrenheit"}),
    "section_modulus": ("meter**3", {
        "mm³": "millimeter**3", "in³": "inch**3", "cm³": "centimeter**3", "m³": "meter**3"}),
    "second_moment": ("meter**4", {
        "mm⁴": "millimeter**4", "in⁴": "inch**4", "cm⁴": "centimeter**4", "m⁴": "meter**4"}),
    "viscosity": ("meter**2/second", {"mm²/s": "millimeter**2/second", "m²/s": "meter**2/second"}),
    "energy": ("joule", {"J": "joule", "ft·lbf": "foot*force_pound", "in·lbf": "inch*force_pound",
                         "kJ": "kilojoule"}),
    "density": ("kilogram/meter**3", {
        "kg/m³": "kilogram/meter**3", "lb/in³": "pound/inch**3", "g/cm³": "gram/centimeter**3",
        "lb/ft³": "pound/foot**3"}),
    "stiffness": ("newton/meter", {
        "N/mm": "newton/millimeter", "lbf/in": "force_pound/inch", "N/m": "newton/meter",
        "N/µm": "newton/micrometer"}),
    "ratio": ("dimensionless", {"%": None}),
}
NUMBERS = ["1", "0.001", "3.7", "38.1", "1234.56789", "98765432.1012345"]


def si_value(number, name, si):
    if name is None:
        return Decimal(number) / 100
    return units.Quantity(Decimal(number), units.parse_expression(name).units).to(si).magnitude


print(f"# SI values of typed quantities by pint {pint.__version__}, in decimal arithmetic of 45 digits (its definitions")
print("# follow NIST SP 811 and the 2019 SI). Made by tests/data/units_reference.py. Check: the nearest double, exactly.")
print("kind,unit,typed,si")
for kind, (si, names) in KINDS.items():
    for unit, name in names.items():
        for number in NUMBERS:
            value = si_value(number, name, si)
            print(f"{kind},{unit},{number} {unit},{value:.39e}")
