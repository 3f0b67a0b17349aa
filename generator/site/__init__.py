"""Site: the course as pages that open from a stick, the one-file edition for phones, and the stick itself.

The walk: `pages` writes plain Markdown, `mkdocs_run` renders it, `one_file` gathers the same bodies, `assemble`
makes only what changed, `stick` puts all in one folder, `swap` puts that folder in place whole or not at all.
"""

from generator.site.assemble import kept_reckoner, licence_file, site_files
from generator.site.check_page import CertificateCheck
from generator.site.formulas_page import FORMULAS
from generator.site.mkdocs_run import Docs, SiteSettings, run_mkdocs
from generator.site.one_file import OneFileParts, one_file
from generator.site.pages import build_pages, check, settings
from generator.site.products import Products, key_of, machine_key, versions_key
from generator.site.progress import Progress, silent
from generator.site.reckoner_page import RECKONER
from generator.site.stick import LanguageParts, Print, stick_files, write_stick
from generator.site.swap import swap_in

__all__ = [
    "FORMULAS",
    "RECKONER",
    "CertificateCheck",
    "Docs",
    "LanguageParts",
    "OneFileParts",
    "Print",
    "Products",
    "Progress",
    "SiteSettings",
    "build_pages",
    "check",
    "kept_reckoner",
    "key_of",
    "licence_file",
    "machine_key",
    "one_file",
    "run_mkdocs",
    "settings",
    "silent",
    "site_files",
    "stick_files",
    "swap_in",
    "versions_key",
    "write_stick",
]
