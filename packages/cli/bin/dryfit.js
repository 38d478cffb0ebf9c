#!/usr/bin/env node
import '../dist/dryfit.js';
