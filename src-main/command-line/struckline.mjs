#!/usr/bin/env node
import './main.ts';
